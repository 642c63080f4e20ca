package weltwright.ground.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;
import org.opencv.objdetect.Objdetect;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;

/**
 * The layout of the printed reference sheet: a ChArUco board (a chessboard with a square marker in each white square)
 * of which only the outer two rows and columns are printed, as a frame around a blank working area.
 *
 * <p>The layout is that of OpenCV's {@code CharucoBoard}, not its legacy form: the top left square is black; the white
 * squares, including those inside the frame, are counted row by row from the top left, and their ids start at the
 * sheet's first id. No two sheets share an id, so a marker identifies the sheet.
 *
 * <p>The sheet frame has x to the right, y up the page, and its origin at the page's centre, in mm. Columns are counted
 * from the left and rows from the <em>top</em>, from 0, as in OpenCV.
 *
 * <p>Page sizes: ISO 216 for A4 and A3, ANSI/ASME Y14.1 for Letter (A) and Tabloid (B).
 */
public enum ReferenceSheet {
    A4("A4", 210, 297, 16, 23, 12, 9, 0),
    LETTER("Letter", 215.9, 279.4, 16, 22, 12, 9, 200),
    A3("A3", 297, 420, 18, 25, 16, 12, 400),
    TABLOID("Tabloid", 279.4, 431.8, 16, 26, 16, 12, 650);

    /** Width of the printed frame in squares. */
    public static final int FRAME_SQUARES = 2;

    /** Cells along the side of a marker: 5 of code and 1 of black border at either end. */
    public static final int MARKER_CELLS = 7;

    /** Nominal length of the two bars that the user measures. */
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
     * A marker, centred in a white square.
     *
     * @param id in the dictionary
     * @param column of its square, from the left
     * @param row of its square, from the top
     */
    public record Marker(int id, int column, int row) {}

    /** Returns the common name of the page size. */
    public String pageName() {
        return pageName;
    }

    /** Returns the width of the page in portrait. */
    public double pageWidthMm() {
        return pageWidthMm;
    }

    /** Returns the height of the page in portrait. */
    public double pageHeightMm() {
        return pageHeightMm;
    }

    /** Returns the number of columns of squares. */
    public int squaresAcross() {
        return squaresAcross;
    }

    /** Returns the number of rows of squares. */
    public int squaresDown() {
        return squaresDown;
    }

    /** Returns the side of a square. */
    public double squareMm() {
        return squareMm;
    }

    /** Returns the side of a marker with its black border. */
    public double markerMm() {
        return markerMm;
    }

    /** Returns the id of the first marker in the dictionary. */
    public int firstId() {
        return firstId;
    }

    /** Returns the width of the board over all squares. */
    public double boardWidthMm() {
        return squaresAcross * squareMm;
    }

    /** Returns the height of the board over all squares. */
    public double boardHeightMm() {
        return squaresDown * squareMm;
    }

    /** Whether a square is black. */
    public boolean isBlack(int column, int row) {
        return (column + row) % 2 == 0;
    }

    /** Whether a square belongs to the printed frame. */
    public boolean isPrinted(int column, int row) {
        return column < FRAME_SQUARES
                || row < FRAME_SQUARES
                || column >= squaresAcross - FRAME_SQUARES
                || row >= squaresDown - FRAME_SQUARES;
    }

    /** Returns the top left corner of a square; for the number of columns and rows, the board's bottom right corner. */
    public Point gridPoint(int column, int row) {
        return new Point(column * squareMm - boardWidthMm() / 2, boardHeightMm() / 2 - row * squareMm);
    }

    /** Returns the number of inner chessboard corners of the whole board, each shared by four squares. */
    public int cornerCount() {
        return (squaresAcross - 1) * (squaresDown - 1);
    }

    /** Returns an inner chessboard corner by OpenCV's corner id: row by row from the top left, from 0. */
    public Point corner(int cornerId) {
        return gridPoint(cornerColumn(cornerId), cornerRow(cornerId));
    }

    /**
     * Whether all four squares around an inner corner are printed. At the inner border of the frame, where they are
     * not, a marker detector may report a corner, but sub-pixel refinement for saddle points does not apply.
     */
    public boolean isCornerPrinted(int cornerId) {
        int column = cornerColumn(cornerId);
        int row = cornerRow(cornerId);
        return isPrinted(column, row)
                && isPrinted(column - 1, row)
                && isPrinted(column, row - 1)
                && isPrinted(column - 1, row - 1);
    }

    /** Returns the markers of the printed frame in the order of their ids. */
    public List<Marker> markers() {
        return allMarkers().stream().filter(m -> isPrinted(m.column(), m.row())).toList();
    }

    /** Returns the printed marker of an id. */
    public Optional<Marker> marker(int id) {
        return markers().stream().filter(m -> m.id() == id).findFirst();
    }

    /** Returns the sheet with a printed marker of an id. */
    public static Optional<ReferenceSheet> ofMarker(int id) {
        for (ReferenceSheet sheet : values()) {
            if (sheet.marker(id).isPresent()) {
                return Optional.of(sheet);
            }
        }
        return Optional.empty();
    }

    /** Returns the corners of a marker's border in OpenCV's order: top left, then clockwise as printed. */
    public List<Point> markerCorners(Marker marker) {
        double in = (squareMm - markerMm) / 2;
        Point topLeft = gridPoint(marker.column(), marker.row()).plus(new Point(in, -in));
        return List.of(
                topLeft,
                topLeft.plus(new Point(markerMm, 0)),
                topLeft.plus(new Point(markerMm, -markerMm)),
                topLeft.plus(new Point(0, -markerMm)));
    }

    /** Returns the cells of a marker with its border: {@code [row][column]} from the top left, true where black. */
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

    int cornerColumn(int cornerId) {
        return cornerId % (squaresAcross - 1) + 1;
    }

    int cornerRow(int cornerId) {
        return cornerId / (squaresAcross - 1) + 1;
    }
}
