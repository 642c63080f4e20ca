package weltwright.ground.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;
import org.opencv.objdetect.Objdetect;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;

/**
 * The geometry of the printed sheet that a knife is photographed on: a ChArUco board (a chessboard with a square marker
 * in each white square) of which only the outer two rows and columns of squares are printed, a frame round a plain
 * working area.
 *
 * <p>The layout is that of OpenCV's {@code CharucoBoard}, not its legacy form: the top left square is black; the white
 * squares, those inside the frame too, are counted row by row from the top left, and their ids run on from the sheet's
 * first id. No two sheets share an id, so that one marker tells the sheet and the place on it.
 *
 * <p>Places are in the sheet frame: x to the right, y up the page, the origin at the page's centre, in mm. Columns are
 * counted from the left and rows from the <em>top</em>, both from 0, as OpenCV counts them.
 *
 * <p>Page sizes: ISO 216 for A4 and A3, ANSI/ASME Y14.1 for Letter (A) and Tabloid (B).
 */
public enum ReferenceSheet {
    A4("A4", 210, 297, 16, 23, 12, 9, 0),
    LETTER("Letter", 215.9, 279.4, 16, 22, 12, 9, 200),
    A3("A3", 297, 420, 18, 25, 16, 12, 400),
    TABLOID("Tabloid", 279.4, 431.8, 16, 26, 16, 12, 650);

    /** How many rows and columns of squares are printed along each side. */
    public static final int FRAME_SQUARES = 2;

    /** Cells along the side of a marker: 5 of code, and 1 of black border at either end. */
    public static final int MARKER_CELLS = 7;

    /** Nominal length of the bar that is printed in each direction for the user to measure. */
    public static final double BAR_MM = 100;

    private final String pageName;
    private final double pageWidthMm;
    private final double pageHeightMm;
    private final int squaresAcross;
    private final int squaresDown;
    private final double squareMm;
    private final double markerMm;
    private final int firstId;

    ReferenceSheet(
            String pageName,
            double pageWidthMm,
            double pageHeightMm,
            int squaresAcross,
            int squaresDown,
            double squareMm,
            double markerMm,
            int firstId) {
        this.pageName = pageName;
        this.pageWidthMm = pageWidthMm;
        this.pageHeightMm = pageHeightMm;
        this.squaresAcross = squaresAcross;
        this.squaresDown = squaresDown;
        this.squareMm = squareMm;
        this.markerMm = markerMm;
        this.firstId = firstId;
    }

    /**
     * A marker and the white square that it stands in the middle of.
     *
     * @param id in the dictionary
     * @param column of its square, from the left
     * @param row of its square, from the top
     */
    public record Marker(int id, int column, int row) {}

    /** What a stationer calls the page. */
    public String pageName() {
        return pageName;
    }

    /** Of the page upright. */
    public double pageWidthMm() {
        return pageWidthMm;
    }

    /** Of the page upright. */
    public double pageHeightMm() {
        return pageHeightMm;
    }

    /** How many squares the board has from left to right. */
    public int squaresAcross() {
        return squaresAcross;
    }

    /** How many squares the board has from top to bottom. */
    public int squaresDown() {
        return squaresDown;
    }

    /** The side of a square of the board. */
    public double squareMm() {
        return squareMm;
    }

    /** The side of a marker, its black border with it. */
    public double markerMm() {
        return markerMm;
    }

    /** The number of its first marker in the dictionary; the others follow on it. */
    public int firstId() {
        return firstId;
    }

    /** From the outer side of the leftmost squares to that of the rightmost. */
    public double boardWidthMm() {
        return squaresAcross * squareMm;
    }

    /** From the outer side of the uppermost squares to that of the lowest. */
    public double boardHeightMm() {
        return squaresDown * squareMm;
    }

    /** Black squares and white ones alternate, from black at the top left. */
    public boolean isBlack(int column, int row) {
        return (column + row) % 2 == 0;
    }

    /** Whether a square of the board is in the printed frame; the others are the working area. */
    public boolean isPrinted(int column, int row) {
        return column < FRAME_SQUARES
                || row < FRAME_SQUARES
                || column >= squaresAcross - FRAME_SQUARES
                || row >= squaresDown - FRAME_SQUARES;
    }

    /**
     * The place where the square of this column and row has its top left corner; with the number of columns and rows,
     * the board's bottom right corner.
     */
    public Point gridPoint(int column, int row) {
        return new Point(column * squareMm - boardWidthMm() / 2, boardHeightMm() / 2 - row * squareMm);
    }

    /** How many inner chessboard corners the whole board has: those that four squares share. */
    public int cornerCount() {
        return (squaresAcross - 1) * (squaresDown - 1);
    }

    /** The place of an inner chessboard corner, by OpenCV's corner id: row by row from the top left, from 0. */
    public Point corner(int cornerId) {
        return gridPoint(cornerColumn(cornerId), cornerRow(cornerId));
    }

    /**
     * Whether all four squares round an inner corner are printed. Along the inner side of the frame black meets white
     * paper on three sides: a marker detector may report a corner there, but a sub-pixel search made for the saddle
     * between four squares is not to be trusted with it.
     */
    public boolean isCornerPrinted(int cornerId) {
        int column = cornerColumn(cornerId);
        int row = cornerRow(cornerId);
        return isPrinted(column, row)
                && isPrinted(column - 1, row)
                && isPrinted(column, row - 1)
                && isPrinted(column - 1, row - 1);
    }

    /** The markers of the printed frame, by rising id. */
    public List<Marker> markers() {
        return allMarkers().stream().filter(m -> isPrinted(m.column(), m.row())).toList();
    }

    /** The printed marker of this id, if this sheet has one. */
    public Optional<Marker> marker(int id) {
        return markers().stream().filter(m -> m.id() == id).findFirst();
    }

    /** The sheet in whose printed frame a marker of this id stands, if there is one. */
    public static Optional<ReferenceSheet> ofMarker(int id) {
        for (ReferenceSheet sheet : values()) {
            if (sheet.marker(id).isPresent()) {
                return Optional.of(sheet);
            }
        }
        return Optional.empty();
    }

    /** The four corners of a marker's black border in OpenCV's order: top left, then clockwise as printed. */
    public List<Point> markerCorners(Marker marker) {
        double in = (squareMm - markerMm) / 2;
        Point topLeft = gridPoint(marker.column(), marker.row()).plus(new Point(in, -in));
        return List.of(
                topLeft,
                topLeft.plus(new Point(markerMm, 0)),
                topLeft.plus(new Point(markerMm, -markerMm)),
                topLeft.plus(new Point(0, -markerMm)));
    }

    /**
     * The pattern of a marker, its black border included: {@code [row][column]} from the top left, true where black.
     * {@link #MARKER_CELLS} each way.
     */
    public static boolean[][] blackCells(Marker marker) {
        OpenCvLibraries.load();
        Mat image = new Mat();
        Objdetect.getPredefinedDictionary(Objdetect.DICT_5X5_1000)
                .generateImageMarker(marker.id(), MARKER_CELLS, image, 1);
        byte[] pixels = new byte[MARKER_CELLS * MARKER_CELLS];
        image.get(0, 0, pixels);
        image.release();
        boolean[][] black = new boolean[MARKER_CELLS][MARKER_CELLS];
        for (int i = 0; i < pixels.length; i++) {
            black[i / MARKER_CELLS][i % MARKER_CELLS] = pixels[i] == 0;
        }
        return black;
    }

    private List<Marker> allMarkers() {
        List<Marker> markers = new ArrayList<>();
        for (int row = 0; row < squaresDown; row++) {
            for (int column = 0; column < squaresAcross; column++) {
                if (!isBlack(column, row)) {
                    markers.add(new Marker(firstId + markers.size(), column, row));
                }
            }
        }
        return markers;
    }

    private int cornerColumn(int cornerId) {
        return cornerId % (squaresAcross - 1) + 1;
    }

    private int cornerRow(int cornerId) {
        return cornerId / (squaresAcross - 1) + 1;
    }
}
