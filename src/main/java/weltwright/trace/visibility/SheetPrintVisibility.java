package weltwright.trace.visibility;

import java.util.ArrayList;
import java.util.List;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.rectification.LineStripSampler;
import weltwright.geometry.Point;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.image.DecodedPhoto;
import weltwright.trace.segment.RandomWalkerSegmentation;
import weltwright.units.PrintScale;

/**
 * Where the sheet's print is to be seen, and where something hides it: along the pale blue lines of the working area by
 * how much darker than the paper they are, and no less blue than elsewhere; along the frame's squares by their
 * contrast. A shadow darkens print and paper alike and leaves both as they were; whatever lies on the sheet hides them.
 *
 * <p>Brightness says more than hue: cameras and compression keep a quarter of a picture's hues or less.
 */
public final class SheetPrintVisibility {
    private static final double STEP_MM = 0.6;

    /** Looked at together, so that grain averages out: this far to both sides along the line. */
    private static final double ALONG_MM = 0.8;

    /** Paper is looked at this far from a line's middle. */
    private static final double LINE_ASIDE_MM = 0.9;

    /**
     * A black square is looked at every so many mm farther in, too, to half way to its middle. As a part of what black
     * gives back, its grain is several times that of paper, and so holds up walkers ({@link RandomWalkerSegmentation})
     * that set out from its edge: a knife that ends in a square would get most of it.
     */
    private static final double INWARD_MM = 1;

    private static final double WELL_INSIDE = 4;

    /** Half of the white that the board leaves between a square's edge and its marker; half a marker's cell is more. */
    private final double frameAsideMm;

    private final ReferenceSheet sheet;
    private final PrintScale scale;
    private final DecodedPhoto picture;
    private final CameraView view;
    private final double pxPerMm;

    public SheetPrintVisibility(ReferenceSheet sheet, PrintScale scale, DecodedPhoto picture, CameraView view) {
        this.sheet = sheet;
        this.scale = scale;
        this.picture = picture;
        this.view = view;
        this.pxPerMm = view.pxPerMm();
        this.frameAsideMm = (sheet.squareMm() - sheet.markerMm()) / 4;
    }

    public PrintVisibility look() {
        List<LineLook> lines = lineLooks();
        List<PrintVisibility.Sight> sights = new ArrayList<>(frame());
        List<Point> unclear = new ArrayList<>();
        double[] lineColour = new double[3];
        LineVisibilityMeasure<LineLook> darkness = LineVisibilityMeasure.of(lines, LineLook::darkness);
        LineVisibilityMeasure<LineLook> blueness = LineVisibilityMeasure.of(lines, LineLook::blueness);
        if (darkness.tells()) {
            for (LineLook look : lines) {
                if (look.even() && darkness.isUsual(look) && !blueness.isLess(look)) {
                    sights.add(new PrintVisibility.Sight(look.at(), true));
                    for (int k = 0; k < 3; k++) {
                        lineColour[k] += look.paperLessLine()[k];
                    }
                } else if (look.even() && darkness.isNone(look)) {
                    sights.add(new PrintVisibility.Sight(look.at(), false));
                } else {
                    unclear.add(look.at());
                }
            }
        }
        return new PrintVisibility(sights, unclear, lineColour);
    }

    /**
     * @param blueness how much less the line lowers blue than red, as a part of the paper's brightness
     * @param darkness how much it lowers green
     * @param even whether the paper on its two sides is equally bright
     */
    private record LineLook(Point at, double blueness, double darkness, boolean even, double[] paperLessLine) {}

    private List<LineLook> lineLooks() {
        List<LineStripSampler.Lane> lanes = new ArrayList<>();
        int frame = ReferenceSheet.FRAME_SQUARES;
        for (int column = frame + 1; column < sheet.squaresAcross() - frame; column++) {
            alongLine(sheet.gridPoint(column, frame), sheet.gridPoint(column, sheet.squaresDown() - frame), lanes);
        }
        for (int row = frame + 1; row < sheet.squaresDown() - frame; row++) {
            alongLine(sheet.gridPoint(frame, row), sheet.gridPoint(sheet.squaresAcross() - frame, row), lanes);
        }
        float[][] seen = strips().lanes(lanes);
        List<LineLook> looks = new ArrayList<>();
        for (int i = 0; i < seen.length; i += 3) {
            LineStripSampler.Lane lane = lanes.get(i);
            double crossing = sheet.squareMm() * (lane.along().x() != 0 ? scale.x() : scale.y());
            for (int k = 0; k < lane.count(); k++) {
                // The frame and the lines that cross spoil a look.
                double station = (k + 1) * STEP_MM;
                double fromCrossing = Math.abs(station - crossing * Math.round(station / crossing));
                if (fromCrossing >= ALONG_MM + 0.5 && isInPicture(lane.middle(k))) {
                    looks.add(lineLook(lane.middle(k), seen[i], seen[i + 1], seen[i + 2], 3 * k));
                }
            }
        }
        return looks;
    }

    /** Three for a line: on it, to its left, to its right. */
    private void alongLine(Point from, Point to, List<LineStripSampler.Lane> lanes) {
        Point a = scaled(from);
        Point b = scaled(to);
        Point along = b.minus(a).unit();
        Point aside = along.left().times(LINE_ASIDE_MM);
        Point first = a.plus(along.times(STEP_MM));
        int count = (int) Math.ceil(a.distance(b) / STEP_MM) - 1;
        LineStripSampler.Lane on = new LineStripSampler.Lane(first, along, STEP_MM, count);
        lanes.addAll(List.of(on, on.moved(aside), on.moved(aside.times(-1))));
    }

    /** @param i where the three colours lie in the arrays */
    private static LineLook lineLook(Point at, float[] middle, float[] left, float[] right, int i) {
        double[] step = new double[3];
        for (int k = 0; k < 3; k++) {
            step[k] = (left[i + k] + right[i + k]) / 2 - middle[i + k];
        }
        double red = 2 * step[2] / (left[i + 2] + right[i + 2]);
        double blue = 2 * step[0] / (left[i] + right[i]);
        double darkness = 2 * step[1] / (left[i + 1] + right[i + 1]);
        boolean even = Math.abs(left[i + 1] - right[i + 1]) < 0.06 * (left[i + 1] + right[i + 1]);
        return new LineLook(at, red - blue, darkness, even, step);
    }

    /**
     * A look across an edge of black print.
     *
     * @param places on the white side of it, on the black one, and then farther and farther in
     * @param brightness at each of them
     */
    private record FrameLook(List<Point> places, float[] brightness) {
        /** Of the white side over a place on the black one. */
        double contrast(int place) {
            return brightness[0] / (double) brightness[place];
        }

        /** How many of its places look as they are printed, from the white side on. */
        int visible(double leastContrast) {
            int visible = 1;
            while (visible < brightness.length && contrast(visible) > leastContrast) {
                visible++;
            }
            return visible;
        }
    }

    private List<PrintVisibility.Sight> frame() {
        List<FrameLook> looks = frameLooks();
        double[] contrast = looks.stream().mapToDouble(look -> look.contrast(1)).toArray();
        double usual = OrderStatistic.quantile(contrast, 0.6);
        List<PrintVisibility.Sight> sights = new ArrayList<>();
        for (FrameLook look : looks) {
            int visible = look.visible(0.6 * usual);
            if (visible > 1) {
                look.places().subList(0, visible).forEach(at -> sights.add(new PrintVisibility.Sight(at, true)));
            } else if (look.contrast(1) < Math.pow(usual, 0.25)) {
                look.places().subList(0, 2).forEach(at -> sights.add(new PrintVisibility.Sight(at, false)));
            }
        }
        return sights;
    }

    private List<FrameLook> frameLooks() {
        List<List<LineStripSampler.Lane>> sides = new ArrayList<>();
        for (int row = 0; row < sheet.squaresDown(); row++) {
            for (int column = 0; column < sheet.squaresAcross(); column++) {
                if (sheet.isPrinted(column, row) && sheet.isBlack(column, row)) {
                    List<Point> corners = List.of(
                            sheet.gridPoint(column, row),
                            sheet.gridPoint(column + 1, row),
                            sheet.gridPoint(column + 1, row + 1),
                            sheet.gridPoint(column, row + 1));
                    sides.addAll(aroundBlack(corners, sheet.squareMm() / 4));
                }
            }
        }
        for (ReferenceSheet.Marker marker : sheet.markers()) {
            sides.addAll(aroundBlack(sheet.markerCorners(marker), frameAsideMm));
        }
        float[][] seen = strips().lanes(sides.stream().flatMap(List::stream).toList());
        List<FrameLook> looks = new ArrayList<>();
        int first = 0;
        for (List<LineStripSampler.Lane> side : sides) {
            for (int k = 0; k < side.get(0).count(); k++) {
                looks.add(look(side, seen, first, k));
            }
            first += side.size();
        }
        looks.removeIf(look -> look.places().size() < 2);
        return looks;
    }

    /** One of a side's looks, as far as it lies in the picture. */
    private FrameLook look(List<LineStripSampler.Lane> side, float[][] seen, int first, int k) {
        List<Point> places = side.stream()
                .map(lane -> lane.middle(k))
                .takeWhile(this::isInPicture)
                .toList();
        float[] brightness = new float[places.size()];
        for (int i = 0; i < brightness.length; i++) {
            brightness[i] = seen[first + i][3 * k + 1];
        }
        return new FrameLook(places, brightness);
    }

    /**
     * Black meets white along all four sides of a black square, and of a marker: a rim of white, or paper. Lanes for
     * each side: outside, inside, and farther and farther in.
     *
     * @param corners clockwise as printed
     * @param deepMm how far to look into the black
     */
    private List<List<LineStripSampler.Lane>> aroundBlack(List<Point> corners, double deepMm) {
        List<List<LineStripSampler.Lane>> sides = new ArrayList<>();
        for (int side = 0; side < 4; side++) {
            Point a = scaled(corners.get((side + 1) % 4));
            Point b = scaled(corners.get(side));
            double length = a.distance(b);
            Point along = b.minus(a).unit();
            // Anticlockwise round the square, the black lies to the left.
            Point inward = along.left();
            Point first = a.plus(along.times(ALONG_MM + 0.5));
            int count = Math.max(0, 1 + (int) Math.floor((length - 2 * (ALONG_MM + 0.5)) / STEP_MM));
            List<LineStripSampler.Lane> lanes = new ArrayList<>();
            lanes.add(new LineStripSampler.Lane(first.minus(inward.times(frameAsideMm)), along, STEP_MM, count));
            for (double deep = frameAsideMm; deep <= deepMm; deep += INWARD_MM) {
                lanes.add(new LineStripSampler.Lane(first.plus(inward.times(deep)), along, STEP_MM, count));
            }
            sides.add(lanes);
        }
        return sides;
    }

    private LineStripSampler strips() {
        return new LineStripSampler(picture, view, ALONG_MM);
    }

    private Point scaled(Point p) {
        return new Point(p.x() * scale.x(), p.y() * scale.y());
    }

    /** Whether all of a look at a place lies in the picture; what lies outside is neither seen nor hidden. */
    private boolean isInPicture(Point at) {
        double reach = Math.max(ALONG_MM, Math.max(LINE_ASIDE_MM, frameAsideMm));
        // Nowhere does a sheet look so much larger than on the whole.
        if (isSeen(at, WELL_INSIDE * reach * pxPerMm)) {
            return true;
        }
        return isSeen(at.plus(new Point(-reach, -reach)), 0)
                && isSeen(at.plus(new Point(reach, -reach)), 0)
                && isSeen(at.plus(new Point(-reach, reach)), 0)
                && isSeen(at.plus(new Point(reach, reach)), 0);
    }

    private boolean isSeen(Point place, double marginPx) {
        Point px = view.pixel(Plane.GROUND.over(place));
        return Math.min(px.x(), px.y()) >= marginPx
                && px.x() <= picture.widthPx() - 1 - marginPx
                && px.y() <= picture.heightPx() - 1 - marginPx;
    }
}
