package weltwright.trace;

import java.util.List;
import java.util.stream.DoubleStream;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.SymmetricSystem;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.View;
import weltwright.knife.HandleEnd;
import weltwright.knife.Sides;

/**
 * The line across a knife at which its handle ends, as seen in the picture between both sides of the outline.
 *
 * <p>Made for a front that is about straight and square to the knife, and for a handle or guard that differs from the blade
 * in colour or brightness. Many rows across the knife tell of one line, so it is found where neither end of it shows a
 * corner. The steps:
 *
 * <ol>
 *   <li>Fisher's discriminant of the colours a few millimetres behind and before the rough place makes the one brightness
 *       in which they differ most;
 *   <li>how much of the whole step from the handle's to the blade's each place makes along the knife; no place counts for
 *       more than the whole step, so that a glint does not outvote the rest;
 *   <li>the line on which the sum of that is greatest, over place, slope and bow;
 *   <li>least squares through the steepest places of all rows near it.
 * </ol>
 *
 * <p>A thick front looked at aslant is bowed: its rim at height z over the mid-plane is seen z times the lean of the line
 * of sight farther on, most in the middle and not at all where it meets the outline. Where the front's face turns away
 * from the camera, the rim hides its foot. Where it turns to it, rim, face and the shadow at its foot are all seen, and how
 * the line is bowed is anyone's guess; its ends are the same.
 */
final class FrontLine {
    private static final double MM_PER_PX = 0.1;

    /** The rough place is not farther off than this. */
    private static final double SEARCH_MM = 3;

    /** Colours are learned from so far behind and before a place, but for what is right beside it. */
    private static final double LEARN_MM = 4;

    private static final double SKIP_MM = 1.2;

    /** A step is the mean over so much before a place less that over so much behind it. */
    private static final double ARM_MM = 0.5;

    /** Parts of half the width, next to the outline: where nothing is measured, and where nothing is learned. */
    private static final double RIM = 0.025;

    private static final double SHADED_RIM = 0.1;

    private static final double ROW = 0.02;

    /** More than most fronts slant, and how much a slant counts against a line: common practice is to file them square. */
    private static final double MOST_SLOPE = Math.tan(Math.toRadians(8));

    private static final double SLANT_COST = 0.1;
    private static final int SLOPES = 10;

    /** To either side of where a line is sought, as many places are tried. */
    private static final int PLACES = 15;

    /** Of a superellipse: between an ellipse and a slab with rounded corners. Common practice. */
    private static final double SECTION_EXPONENT = 2.5;

    /** Fronts are about this part of the handle's thickness. Common practice. */
    private static final double[] BOWS = {0.4, 0.6, 0.8, 1};

    /** Where the face is seen, its rim lies behind the foot, and a shadow before it. */
    private static final double[] FACE_BOWS = {-0.8, -0.4, 0, 0.4};

    /** Variance of a colour's noise that is always there, in grey levels squared. */
    private static final double NOISE = 12;

    private static final int ROUNDS = 3;

    /** Steepest places farther than this from the line belong to something else; those nearer count the more. */
    private static final double NEAR_MM = 0.5;

    private static final double STRAY_MM = 0.2;
    private static final double LEAST_STEP = 0.3;
    private static final int LEAST_ROWS = 12;

    /** Rows are seen through the same blur as their neighbours, this many of them together. */
    private static final double ALIKE_ROWS = 3;

    /** Of the whole step, what a line must make in the mean to be one. */
    private static final double LEAST_SHARE = 0.2;

    /** Fronts are not filed truer than this. Common practice. */
    private static final double TRUE_MM = 0.1;

    /** The same of their slant; of a face that is seen, shade and shadow make it uncertain besides. */
    private static final double TRUE_SLOPE = Math.toRadians(0.3);
    private static final double FACE_SLOPE = Math.toRadians(0.5);

    /** How much of the bow at most is not told apart from the line's place, the section's squareness being unknown. */
    private static final double BOW_SIGMA = 0.07;

    /** A rough place, where no line is seen. */
    private static final double ROUGH_SIGMA_MM = 1.5;

    private static final double ROUGH_SLOPE = Math.toRadians(30);

    private static final List<Row> ROWS = Row.all();

    private final GroundRaster raster;
    private final float[] bgr;
    private final Sides sides;
    private final Point lean;
    private final double halfMm;
    private final double bladeMm;

    private FrontLine(
            GroundRaster raster, float[] bgr, Sides sides, Point lean, ThickKnife thickness) {
        this.raster = raster;
        this.bgr = bgr;
        this.sides = sides;
        this.lean = lean;
        this.halfMm = thickness.handleThicknessMm() / 2;
        this.bladeMm = thickness.spineThicknessMm() / 2;
    }

    /** A line that is seen: at y = 0, its slope, and how far its middle lies before its ends. */
    private record Seen(double x, double slope, double bowMm) {}

    /**
     * @param outline along its axis: x towards the tip
     * @param axis the motion from that frame to the ground frame
     * @param nearX roughly where the handle ends
     * @return in the outline's frame, in the mid-plane
     */
    static HandleEnd find(
            Picture picture,
            View view,
            Plane midPlane,
            Polyline outline,
            Placement axis,
            double nearX,
            ThickKnife thickness) {
        Sides sides = new Sides(outline);
        double reach = 2 * SEARCH_MM + LEARN_MM;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double x = nearX - reach; x <= nearX + reach; x++) {
            low = Math.min(low, sides.lower(x));
            high = Math.max(high, sides.upper(x));
        }
        GroundRaster raster =
                GroundRaster.covering(new Point(nearX - reach, low), new Point(nearX + reach, high), MM_PER_PX);
        Mat seen = raster.rectified(picture, view, midPlane, axis);
        Imgproc.GaussianBlur(seen, seen, new Size(0, 0), 1.5);
        seen.convertTo(seen, CvType.CV_32F);
        float[] bgr = new float[3 * raster.columns() * raster.rows()];
        seen.get(0, 0, bgr);
        seen.release();
        Point lean = axis.inverse().rotate(view.lean(midPlane.over(axis.apply(new Point(nearX, 0)))));
        return new FrontLine(raster, bgr, sides, lean, thickness).find(nearX);
    }

    private HandleEnd find(double nearX) {
        double bowMm = halfMm * Math.abs(lean.x());
        Seen line = new Seen(nearX, 0, 0);
        float[] steps = {};
        for (int round = 0; round < ROUNDS; round++) {
            steps = steps(line.x());
            line = likeliest(steps, line.x(), round == 0 ? SEARCH_MM : SEARCH_MM / 2);
        }
        HandleEnd refined = refined(steps, line);
        return refined == null ? new HandleEnd(nearX, 0, ROUGH_SLOPE, bowMm, ROUGH_SIGMA_MM + bowMm) : refined;
    }

    /** How much of the whole step from handle to blade is made at each pixel's left rim. */
    private float[] steps(double x) {
        double[] weight = discriminant(x);
        int columns = raster.columns();
        float[] steps = new float[columns * raster.rows()];
        int arm = (int) Math.round(ARM_MM / MM_PER_PX);
        double[] sum = new double[columns + 1];
        for (int r = 0; r < raster.rows(); r++) {
            for (int c = 0; c < columns; c++) {
                int i = 3 * (r * columns + c);
                sum[c + 1] = sum[c] + weight[0] * bgr[i] + weight[1] * bgr[i + 1] + weight[2] * bgr[i + 2];
            }
            for (int c = arm; c < columns - arm; c++) {
                steps[r * columns + c] = (float) ((2 * sum[c] - sum[c - arm] - sum[c + arm]) / arm);
            }
        }
        return steps;
    }

    /** Fisher's, scaled so that handle and blade are one apart. */
    private double[] discriminant(double x) {
        ColourSums handle = new ColourSums();
        ColourSums blade = new ColourSums();
        for (int c = 0; c < raster.columns(); c++) {
            double u = raster.place(c, 0).x();
            if (Math.abs(u - x) < SKIP_MM || Math.abs(u - x) > LEARN_MM) {
                continue;
            }
            double rim = SHADED_RIM * sides.width(u);
            int from = (int) Math.ceil(raster.pixel(new Point(0, sides.upper(u) - rim)).y());
            int to = (int) Math.floor(raster.pixel(new Point(0, sides.lower(u) + rim)).y());
            for (int r = from; r <= to; r++) {
                (u < x ? handle : blade).add(bgr, 3 * (r * raster.columns() + c));
            }
        }
        double[][] within = new double[3][3];
        double[] apart = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                within[i][j] = handle.covariance(i, j) + blade.covariance(i, j) + (i == j ? NOISE : 0);
            }
            apart[i] = handle.mean(i) - blade.mean(i);
        }
        double[] weight = new SymmetricSystem(within).solve(apart);
        double whole = weight[0] * apart[0] + weight[1] * apart[1] + weight[2] * apart[2];
        return new double[] {weight[0] / whole, weight[1] / whole, weight[2] / whole};
    }

    private Seen likeliest(float[] steps, double nearX, double searchMm) {
        Seen best = new Seen(nearX, 0, 0);
        double most = Double.NEGATIVE_INFINITY;
        for (double bow : lean.x() < 0 ? BOWS : FACE_BOWS) {
            for (int k = -SLOPES; k <= SLOPES; k++) {
                double slant = (double) k / SLOPES;
                for (double x = nearX - searchMm; x <= nearX + searchMm; x += searchMm / PLACES) {
                    Seen line = new Seen(x, slant * MOST_SLOPE, bow * halfMm * Math.abs(lean.x()));
                    double likely = share(steps, line) - SLANT_COST * slant * slant;
                    if (likely > most) {
                        most = likely;
                        best = line;
                    }
                }
            }
        }
        return best;
    }

    /** How much of the whole step is made on a line, in the mean of its rows. */
    private double share(float[] steps, Seen line) {
        double sum = 0;
        double middle = sides.middle(line.x());
        double half = sides.width(line.x()) / 2;
        for (Row row : ROWS) {
            sum += Math.max(-0.5, Math.min(1, step(steps, place(line, middle, half, row))));
        }
        return sum / ROWS.size();
    }

    /** Where the line is seen in one row. */
    private Point place(Seen line, double middle, double half, Row row) {
        double y = middle + row.part() * half;
        double bow = line.bowMm() * row.height();
        // What is seen of a front that turns away is its rim; where it turns to the camera, its foot on the blade's flat.
        double z = lean.x() < 0 ? -bow / lean.x() : bladeMm;
        double foot = lean.x() < 0 ? 0 : -bladeMm * lean.x();
        return new Point(line.x() + line.slope() * y + bow + foot, y - z * lean.y());
    }

    /**
     * One row across the knife.
     *
     * @param part of half the width from the middle, from -1 to 1
     * @param height of the front's rim there, as a part of its greatest
     */
    private record Row(double part, double height) {
        static Row at(double part) {
            return new Row(
                    part, Math.pow(1 - Math.pow(Math.abs(part), SECTION_EXPONENT), 1 / SECTION_EXPONENT));
        }

        static List<Row> all() {
            return DoubleStream.iterate(RIM - 1, part -> part <= 1 - RIM, part -> part + ROW)
                    .mapToObj(Row::at)
                    .toList();
        }
    }

    private double step(float[] steps, Point p) {
        Point px = raster.pixel(p);
        int row = (int) Math.round(px.y());
        double column = px.x() + 0.5;
        int left = (int) Math.floor(column);
        if (row < 0 || row >= raster.rows() || left < 0 || left + 1 >= raster.columns()) {
            return 0;
        }
        int i = row * raster.columns() + left;
        return steps[i] + (column - left) * (steps[i + 1] - steps[i]);
    }

    /** Null where too few rows show a step. */
    private HandleEnd refined(float[] steps, Seen line) {
        double half = sides.width(line.x()) / 2;
        double middle = sides.middle(line.x());
        Seen at = line;
        double sigma = 0;
        double slopeSigma = 0;
        for (int round = 0; round <= ROUNDS; round++) {
            double[][] normal = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
            double[] right = new double[3];
            double squares = 0;
            double weights = 0;
            int rows = 0;
            for (Row across : ROWS) {
                Point place = place(at, middle, half, across);
                double off = steepest(steps, place);
                if (Double.isNaN(off)) {
                    continue;
                }
                double weight = Math.min(1, step(steps, place.plus(new Point(off, 0))))
                        / (1 + off * off / (STRAY_MM * STRAY_MM));
                double[] row = {1, across.part() * half, across.height()};
                for (int i = 0; i < 3; i++) {
                    for (int j = 0; j < 3; j++) {
                        normal[i][j] += weight * row[i] * row[j];
                    }
                    right[i] += weight * row[i] * off;
                }
                squares += weight * off * off;
                weights += weight;
                rows++;
            }
            if (rows < LEAST_ROWS) {
                return null;
            }
            SymmetricSystem system = new SymmetricSystem(normal);
            double[] by = system.solve(right);
            at = new Seen(at.x() + by[0] - by[1] * middle, at.slope() + by[1], at.bowMm() + by[2]);
            double scatter = Math.sqrt(ALIKE_ROWS * squares / weights);
            sigma = scatter * Math.sqrt(system.inverse()[0][0]);
            slopeSigma = scatter * Math.sqrt(system.inverse()[1][1]);
        }
        if (share(steps, at) < LEAST_SHARE) {
            return null;
        }
        double bowMm = halfMm * Math.abs(lean.x());
        // A face that is seen is shaded unevenly, and a ground blade's foot lies lower at the edge than at the spine.
        double foot = lean.x() < 0 ? 0 : bladeMm / 2 * lean.x();
        double uneven = lean.x() < 0 ? 0 : FACE_SLOPE;
        return new HandleEnd(
                at.x(),
                at.slope(),
                hypot(TRUE_SLOPE, slopeSigma, foot / half, uneven),
                bowMm,
                hypot(TRUE_MM, sigma, foot, BOW_SIGMA * bowMm));
    }

    private static double hypot(double... parts) {
        double squares = 0;
        for (double part : parts) {
            squares += part * part;
        }
        return Math.sqrt(squares);
    }

    /** How far before a place the steepest one near it lies; not a number where none is steep. */
    private double steepest(float[] steps, Point place) {
        double most = LEAST_STEP;
        double at = Double.NaN;
        for (double off = -NEAR_MM; off <= NEAR_MM; off += MM_PER_PX / 2) {
            double step = step(steps, place.plus(new Point(off, 0)));
            if (step > most) {
                most = step;
                at = off;
            }
        }
        return at;
    }

    /** Sums of colours, and of their products. */
    private static final class ColourSums {
        private final double[] sum = new double[3];
        private final double[][] products = new double[3][3];
        private int count;

        void add(float[] bgr, int at) {
            count++;
            for (int i = 0; i < 3; i++) {
                sum[i] += bgr[at + i];
                for (int j = 0; j < 3; j++) {
                    products[i][j] += bgr[at + i] * bgr[at + j];
                }
            }
        }

        double mean(int channel) {
            return count == 0 ? 0 : sum[channel] / count;
        }

        double covariance(int i, int j) {
            return count == 0 ? 0 : products[i][j] / count - mean(i) * mean(j);
        }
    }
}
