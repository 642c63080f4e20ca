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
 * Measures where the reference sheet's print is visible and where something hides it: along the pale blue lines of the
 * working area by how much darker than the paper they are, provided that they are no less blue than elsewhere; along
 * the edges of the frame's squares by their contrast. A shadow darkens print and paper alike and changes neither.
 *
 * <p>Brightness decides, since cameras and compression keep a quarter of the resolution of hue or less.
 */
public final class SheetPrintVisibility {
    /** Distance of samples along a line; chosen by eye. */
    private static final double STEP_MM = 0.6;

    /** Half the length averaged along a line against grain; chosen by eye. */
    private static final double ALONG_MM = 0.8;

    /** Distance from a line's middle at which the paper is sampled: well beyond its blur; chosen by eye. */
    private static final double LINE_ASIDE_MM = 0.9;

    /** Distance that samples keep from crossing lines and from corners, beyond the length averaged; chosen by eye. */
    private static final double CROSSING_MM = 0.5;

    /**
     * Distance of the samples within a black square, from its edge to half way to its middle. They are seeds for the
     * random walk ({@link RandomWalkerSegmentation}): relative to its brightness, the grain of black print is several
     * times that of paper and stops walkers that start at the square's edge, so that a knife ending in a square would
     * get most of it. Chosen by eye.
     */
    private static final double INWARD_MM = 1;

    /** Greatest difference of the paper on the two sides of a line, as a part of their sum; chosen by eye. */
    private static final double UNEVEN = 0.06;

    /** Quantile of the frame's contrasts that is taken for the typical one: most of the frame is visible; by eye. */
    private static final double TYPICAL_QUANTILE = 0.6;

    /** Least contrast of visible black print, as a part of the typical one; chosen by eye. */
    private static final double VISIBLE_CONTRAST = 0.6;

    /** The typical contrast to this power is the greatest contrast of hidden print; chosen by eye. */
    private static final double HIDDEN_POWER = 0.25;

    /** Half of the white that the board leaves between a square's edge and its marker; half a marker's cell is more. */
    private final double frameAsideMm;

    private final ReferenceSheet sheet;
    private final PrintScale scale;
    private final DecodedPhoto picture;
    private final CameraView view;

    public SheetPrintVisibility(ReferenceSheet sheet, PrintScale scale, DecodedPhoto picture, CameraView view) {
        this.sheet = sheet;
        this.scale = scale;
        this.picture = picture;
        this.view = view;
        this.frameAsideMm = (sheet.squareMm() - sheet.markerMm()) / 4;
    }

    /** Samples all lines of the working area and all edges of black print. */
    public PrintVisibility measure() {
        List<LineSample> lines = lineSamples();
        List<PrintVisibility.Observation> observations = new ArrayList<>(frame());
        List<Point> unclear = new ArrayList<>();
        double[] lineColour = new double[3];
        LineVisibilityMeasure<LineSample> darkness = LineVisibilityMeasure.of(lines, LineSample::darkness);
        LineVisibilityMeasure<LineSample> blueness = LineVisibilityMeasure.of(lines, LineSample::blueness);
        if (darkness.isReliable(1)) {
            for (LineSample sample : lines) {
                if (sample.even() && darkness.isTypical(sample) && !blueness.isSignificantlyLower(sample)) {
                    observations.add(new PrintVisibility.Observation(sample.at(), true));
                    for (int k = 0; k < 3; k++) {
                        lineColour[k] += sample.paperLessLine()[k];
                    }
                } else if (sample.even() && darkness.isAbsent(sample)) {
                    observations.add(new PrintVisibility.Observation(sample.at(), false));
                } else {
                    unclear.add(sample.at());
                }
            }
        }
        return new PrintVisibility(observations, unclear, lineColour);
    }

    /**
     * A sample of a pale line.
     *
     * @param blueness by how much less the line lowers blue than red, relative to the paper
     * @param darkness by how much it lowers green, relative to the paper
     * @param even whether the paper on its two sides is about equally bright
     */
    private record LineSample(Point at, double blueness, double darkness, boolean even, double[] paperLessLine) {}

    private List<LineSample> lineSamples() {
        List<LineStripSampler.Lane> lanes = new ArrayList<>();
        int frame = ReferenceSheet.FRAME_SQUARES;
        for (int column = frame + 1; column < sheet.squaresAcross() - frame; column++) {
            alongLine(sheet.gridPoint(column, frame), sheet.gridPoint(column, sheet.squaresDown() - frame), lanes);
        }
        for (int row = frame + 1; row < sheet.squaresDown() - frame; row++) {
            alongLine(sheet.gridPoint(frame, row), sheet.gridPoint(sheet.squaresAcross() - frame, row), lanes);
        }
        float[][] seen = strips().sample(lanes);
        List<LineSample> samples = new ArrayList<>();
        for (int i = 0; i < seen.length; i += 3) {
            LineStripSampler.Lane lane = lanes.get(i);
            double crossing = sheet.squareMm() * (lane.along().x() != 0 ? scale.x() : scale.y());
            for (int k = 0; k < lane.count(); k++) {
                // The frame and crossing lines disturb a sample.
                double station = (k + 1) * STEP_MM;
                double fromCrossing = Math.abs(station - crossing * Math.round(station / crossing));
                if (fromCrossing >= ALONG_MM + CROSSING_MM && isInPicture(lane.middle(k))) {
                    samples.add(lineSample(lane.middle(k), seen[i], seen[i + 1], seen[i + 2], 3 * k));
                }
            }
        }
        return samples;
    }

    /** Adds three lanes for a line: on it, to its left, to its right. */
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

    /** @param i index of blue in the arrays */
    private static LineSample lineSample(Point at, float[] middle, float[] left, float[] right, int i) {
        double[] step = new double[3];
        for (int k = 0; k < 3; k++) {
            step[k] = (left[i + k] + right[i + k]) / 2 - middle[i + k];
        }
        double red = 2 * step[2] / (left[i + 2] + right[i + 2]);
        double blue = 2 * step[0] / (left[i] + right[i]);
        double darkness = 2 * step[1] / (left[i + 1] + right[i + 1]);
        boolean even = Math.abs(left[i + 1] - right[i + 1]) < UNEVEN * (left[i + 1] + right[i + 1]);
        return new LineSample(at, red - blue, darkness, even, step);
    }

    /**
     * A sample across an edge of black print.
     *
     * @param places a point on its white side, one on its black side, then points farther in
     * @param brightness at each of them, as green
     */
    private record FrameSample(List<Point> places, float[] brightness) {
        /** Returns the brightness of the white side relative to a place on the black one. */
        double contrast(int place) {
            return brightness[0] / (double) brightness[place];
        }

        /** Returns how many of its places, from the white side on, show their print. */
        int visible(double leastContrast) {
            int visible = 1;
            while (visible < brightness.length && contrast(visible) > leastContrast) {
                visible++;
            }
            return visible;
        }
    }

    private List<PrintVisibility.Observation> frame() {
        List<FrameSample> samples = frameSamples();
        double[] contrast =
                samples.stream().mapToDouble(sample -> sample.contrast(1)).toArray();
        double typical = OrderStatistic.quantile(contrast, TYPICAL_QUANTILE);
        List<PrintVisibility.Observation> observations = new ArrayList<>();
        for (FrameSample sample : samples) {
            int visible = sample.visible(VISIBLE_CONTRAST * typical);
            if (visible > 1) {
                sample.places()
                        .subList(0, visible)
                        .forEach(at -> observations.add(new PrintVisibility.Observation(at, true)));
            } else if (sample.contrast(1) < Math.pow(typical, HIDDEN_POWER)) {
                sample.places()
                        .subList(0, 2)
                        .forEach(at -> observations.add(new PrintVisibility.Observation(at, false)));
            }
        }
        return observations;
    }

    private List<FrameSample> frameSamples() {
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
        float[][] seen = strips().sample(sides.stream().flatMap(List::stream).toList());
        List<FrameSample> samples = new ArrayList<>();
        int first = 0;
        for (List<LineStripSampler.Lane> side : sides) {
            for (int k = 0; k < side.get(0).count(); k++) {
                samples.add(sample(side, seen, first, k));
            }
            first += side.size();
        }
        samples.removeIf(sample -> sample.places().size() < 2);
        return samples;
    }

    /** Returns a sample of a side, as far as it lies in the photo. */
    private FrameSample sample(List<LineStripSampler.Lane> side, float[][] seen, int first, int k) {
        List<Point> places = side.stream()
                .map(lane -> lane.middle(k))
                .takeWhile(this::isInPicture)
                .toList();
        float[] brightness = new float[places.size()];
        for (int i = 0; i < brightness.length; i++) {
            brightness[i] = seen[first + i][3 * k + 1];
        }
        return new FrameSample(places, brightness);
    }

    /**
     * Returns the lanes along each side of a black square or marker: one outside, one inside, then farther in.
     *
     * @param corners clockwise as printed
     * @param deepMm distance of the innermost lane from the side
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
            Point first = a.plus(along.times(ALONG_MM + CROSSING_MM));
            int count = Math.max(0, 1 + (int) Math.floor((length - 2 * (ALONG_MM + CROSSING_MM)) / STEP_MM));
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

    /** Returns whether the middle of a sample lies in the photo; print outside of it is neither visible nor hidden. */
    private boolean isInPicture(Point at) {
        Point px = view.pixel(Plane.GROUND.pointAbove(at));
        return Math.min(px.x(), px.y()) >= 0 && px.x() <= picture.widthPx() - 1 && px.y() <= picture.heightPx() - 1;
    }
}
