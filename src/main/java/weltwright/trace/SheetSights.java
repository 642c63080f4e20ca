package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.opencv.core.Mat;
import weltwright.geometry.Point;
import weltwright.ground.ReferenceSheet;
import weltwright.measure.PrintScale;

/**
 * Where the sheet's print is to be seen, and where something hides it: along the pale blue lines of the working area by
 * their blueness, along the frame's squares by their contrast. A shadow darkens print and paper alike and leaves both
 * as they were; whatever lies on the sheet hides them.
 */
final class SheetSights {
    private static final double STEP_MM = 0.6;

    /** Looked at together, so that grain averages out: this far to both sides along the line. */
    private static final double ALONG_MM = 1.2;

    /** Paper is looked at this far from a line's middle. */
    private static final double LINE_ASIDE_MM = 0.9;

    /** Half of the white that the board leaves between a square's edge and its marker. */
    private final double frameAsideMm;

    private final ReferenceSheet sheet;
    private final PrintScale scale;
    private final GroundRaster raster;
    private final byte[] bgr;

    SheetSights(ReferenceSheet sheet, PrintScale scale, GroundRaster raster, Mat seen) {
        this.sheet = sheet;
        this.scale = scale;
        this.raster = raster;
        this.frameAsideMm = (sheet.squareMm() - sheet.markerMm()) / 4;
        this.bgr = new byte[3 * raster.columns() * raster.rows()];
        seen.get(0, 0, bgr);
    }

    /**
     * @param at a point of the sheet, in mm
     * @param visible whether the print at it is seen; else something hides it
     */
    record Sight(Point at, boolean visible) {}

    /**
     * @param sights where it can be told with confidence; points where it cannot are left out
     * @param lineColour the colour of paper less that of its lines where they are seen: blue, green, red
     */
    record Looked(List<Sight> sights, double[] lineColour) {}

    Looked look() {
        List<LineLook> lines = lineLooks();
        List<Sight> sights = new ArrayList<>(frame());
        double[] lineColour = new double[3];
        Measure blueness = new Measure(lines, LineLook::blueness);
        Measure darkness = new Measure(lines, LineLook::darkness);
        // In a picture without colour the lines are merely darker than the paper.
        Measure telling = blueness.tells() ? blueness : darkness;
        if (telling.tells()) {
            for (LineLook look : lines) {
                if (look.even() && telling.isUsual(look)) {
                    sights.add(new Sight(look.at(), true));
                    for (int k = 0; k < 3; k++) {
                        lineColour[k] += look.paperLessLine()[k];
                    }
                } else if (look.even() && telling.isNone(look) && (!darkness.tells() || darkness.isNone(look))) {
                    sights.add(new Sight(look.at(), false));
                }
            }
        }
        return new Looked(sights, lineColour);
    }

    /** One way to see a line, and what it gives where a line is seen. */
    private static final class Measure {
        private final ToDoubleFunction<LineLook> of;
        private final double usual;
        private final double noise;

        Measure(List<LineLook> looks, ToDoubleFunction<LineLook> of) {
            this.of = of;
            double[] sorted = looks.stream().mapToDouble(of).sorted().toArray();
            // Most of the lines are to be seen in any picture of use, so the middle of the upper part is a line's.
            usual = sorted[(int) (0.7 * sorted.length)];
            double[] off = Arrays.stream(sorted)
                    .skip(sorted.length / 2)
                    .map(seen -> Math.abs(seen - usual))
                    .sorted()
                    .toArray();
            noise = off[off.length / 2];
        }

        /** False where lines drown in noise. */
        boolean tells() {
            return usual > 4 * noise;
        }

        boolean isUsual(LineLook look) {
            return Math.abs(of.applyAsDouble(look) - usual) < 0.35 * usual;
        }

        boolean isNone(LineLook look) {
            return Math.abs(of.applyAsDouble(look)) < 0.2 * usual;
        }
    }

    /**
     * @param blueness how much less the line lowers blue than red, as a part of the paper's brightness
     * @param darkness how much it lowers green
     * @param even whether the paper on its two sides is equally bright
     */
    private record LineLook(Point at, double blueness, double darkness, boolean even, double[] paperLessLine) {}

    private List<LineLook> lineLooks() {
        List<LineLook> looks = new ArrayList<>();
        int frame = ReferenceSheet.FRAME_SQUARES;
        for (int column = frame + 1; column < sheet.squaresAcross() - frame; column++) {
            alongLine(sheet.gridPoint(column, frame), sheet.gridPoint(column, sheet.squaresDown() - frame), looks);
        }
        for (int row = frame + 1; row < sheet.squaresDown() - frame; row++) {
            alongLine(sheet.gridPoint(frame, row), sheet.gridPoint(sheet.squaresAcross() - frame, row), looks);
        }
        return looks;
    }

    private void alongLine(Point from, Point to, List<LineLook> looks) {
        Point a = scaled(from);
        Point b = scaled(to);
        double length = a.distance(b);
        Point along = b.minus(a).unit();
        Point aside = along.left().times(LINE_ASIDE_MM);
        double crossing = sheet.squareMm() * (along.x() != 0 ? scale.x() : scale.y());
        for (double s = STEP_MM; s < length; s += STEP_MM) {
            // The frame and the lines that cross spoil a look.
            double fromCrossing = Math.abs(s - crossing * Math.round(s / crossing));
            if (fromCrossing < ALONG_MM + 0.5) {
                continue;
            }
            Point at = a.plus(along.times(s));
            double[] middle = mean(at, along);
            double[] left = mean(at.plus(aside), along);
            double[] right = mean(at.minus(aside), along);
            double red = 2 * middle[2] / (left[2] + right[2]);
            double blue = 2 * middle[0] / (left[0] + right[0]);
            boolean even = Math.abs(left[1] - right[1]) < 0.06 * (left[1] + right[1]);
            double[] step = new double[3];
            for (int k = 0; k < 3; k++) {
                step[k] = (left[k] + right[k]) / 2 - middle[k];
            }
            double darkness = 2 * step[1] / (left[1] + right[1]);
            looks.add(new LineLook(at, blue - red, darkness, even, step));
        }
    }

    /** @param contrast of the white side over the black one */
    private record FrameLook(Point white, Point black, double contrast) {}

    private List<Sight> frame() {
        List<FrameLook> looks = new ArrayList<>();
        for (int row = 0; row < sheet.squaresDown(); row++) {
            for (int column = 0; column < sheet.squaresAcross(); column++) {
                if (sheet.isPrinted(column, row) && sheet.isBlack(column, row)) {
                    aroundSquare(column, row, looks);
                }
            }
        }
        double[] sorted = looks.stream().mapToDouble(FrameLook::contrast).sorted().toArray();
        double usual = sorted[(int) (0.6 * sorted.length)];
        List<Sight> sights = new ArrayList<>();
        for (FrameLook look : looks) {
            boolean visible = look.contrast() > 0.6 * usual;
            if (visible || look.contrast() < Math.pow(usual, 0.25)) {
                sights.add(new Sight(look.white(), visible));
                sights.add(new Sight(look.black(), visible));
            }
        }
        return sights;
    }

    /** Black meets white along all four sides of a black square: a white square's rim, or paper. */
    private void aroundSquare(int column, int row, List<FrameLook> looks) {
        Point[] corner = {
            scaled(sheet.gridPoint(column, row)),
            scaled(sheet.gridPoint(column, row + 1)),
            scaled(sheet.gridPoint(column + 1, row + 1)),
            scaled(sheet.gridPoint(column + 1, row))
        };
        for (int side = 0; side < 4; side++) {
            Point a = corner[side];
            Point b = corner[(side + 1) % 4];
            double length = a.distance(b);
            Point along = b.minus(a).unit();
            // Anticlockwise round the square, the black lies to the left.
            Point inward = along.left().times(frameAsideMm);
            for (double s = ALONG_MM + 0.5; s <= length - ALONG_MM - 0.5; s += STEP_MM) {
                Point at = a.plus(along.times(s));
                double white = mean(at.minus(inward), along)[1];
                double black = mean(at.plus(inward), along)[1];
                looks.add(new FrameLook(at.minus(inward), at.plus(inward), white / black));
            }
        }
    }

    private Point scaled(Point p) {
        return new Point(p.x() * scale.x(), p.y() * scale.y());
    }

    private double[] mean(Point at, Point along) {
        double[] sum = new double[3];
        int count = 0;
        for (double s = -ALONG_MM; s <= ALONG_MM + 1e-9; s += raster.mmPerPx()) {
            Point px = raster.pixel(at.plus(along.times(s)));
            int x = (int) Math.floor(px.x());
            int y = (int) Math.floor(px.y());
            double fx = px.x() - x;
            double fy = px.y() - y;
            for (int k = 0; k < 3; k++) {
                sum[k] += (1 - fy) * ((1 - fx) * level(x, y, k) + fx * level(x + 1, y, k))
                        + fy * ((1 - fx) * level(x, y + 1, k) + fx * level(x + 1, y + 1, k));
            }
            count++;
        }
        for (int k = 0; k < 3; k++) {
            sum[k] = Math.max(1, sum[k] / count);
        }
        return sum;
    }

    private int level(int x, int y, int channel) {
        int column = Math.max(0, Math.min(raster.columns() - 1, x));
        int row = Math.max(0, Math.min(raster.rows() - 1, y));
        return bgr[3 * (row * raster.columns() + column) + channel] & 255;
    }
}
