package weltwright.trace.outline;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.fit.SymmetricSystem;
import weltwright.image.DecodedPhoto;
import weltwright.knife.HandleEndLine;
import weltwright.knife.OutlineSides;

/**
 * The line across a knife at which its handle ends, as seen in the picture between both sides of the outline.
 *
 * <p>Made for a front that is about straight and square to the knife, and for a handle or guard that differs from the
 * blade in colour or brightness. Many rows across the knife tell of one line, so it is found where neither end of it
 * shows a corner. The steps:
 *
 * <ol>
 *   <li>how much of the whole step from the handle's colour to the blade's each place makes
 *       ({@link HandleColourProfile});
 *   <li>the line on which the mean of that is greatest, over place, slope and bow; no place counts for more than the
 *       whole step, so that a glint does not outvote the rest;
 *   <li>the same again, with colours learned beside that line;
 *   <li>least squares through the steepest places of all rows near it.
 * </ol>
 *
 * <p>A thick front looked at aslant is bowed: its rim at height z over the mid-plane is seen z times the lean of the
 * line of sight farther on, most in the middle and not at all where it meets the outline. Where the front's face turns
 * away from the camera, the rim hides its foot. Where it turns to it, rim, face and the shadow at its foot are all
 * seen, and how the line is bowed is anyone's guess; its ends are the same.
 */
final class HandleFrontLine {
    /** Of the rectified picture that a front is looked for in. */
    static final double MM_PER_PX = 0.1;

    /**
     * Blur of the rectified picture: it has about as many pixels as the photo, or more, and all of the photo's noise.
     */
    private static final double BLUR_PX = 1.5;

    /** The rough place is not farther off than this; the line found from it, not farther than half of it. */
    private static final double SEARCH_MM = 3;

    /** Parts of half the width: what is left out next to the outline, and from row to row. */
    private static final double RIM = 0.025;

    private static final double ROW = 0.02;

    /** More than most fronts slant: common practice is to file them square. */
    private static final double MOST_SLOPE = Math.tan(Math.toRadians(8));

    /** Slopes tried to either side, and how far apart places: the next lies well within what least squares look at. */
    private static final int SLOPES = 5;

    private static final double PLACE_MM = 0.2;

    /** Of a superellipse: between an ellipse and a slab with rounded corners. Common practice. */
    private static final double SECTION_EXPONENT = 2.5;

    /** Fronts are about this part of the handle's thickness. Common practice. */
    private static final double[] BOWS = {0.4, 0.6, 0.8, 1};

    /** Where the face is seen, its rim lies behind the foot, and a shadow before it. */
    private static final double[] FACE_BOWS = {-0.8, -0.4, 0, 0.4};

    /** Least squares come to rest in so many rounds. */
    private static final int ROUNDS = 8;

    /**
     * Steepest places farther than this from the line belong to something else; those nearer than a stray count the
     * more.
     */
    private static final double NEAR_MM = 0.5;

    private static final double STRAY_MM = 0.2;

    /** A place that makes less than this of the step is none of the line's, and fewer rows than these make no line. */
    private static final double LEAST_STEP = 0.3;

    private static final int LEAST_ROWS = 12;

    /** Rows are seen through the same blur as their neighbours, this many of them together. */
    private static final double ALIKE_ROWS = 3;

    /**
     * Of the whole step, what a line must make in the mean to be one. A colour that changes evenly over all that was
     * learned from makes a tenth of it anywhere.
     */
    private static final double LEAST_SHARE = 0.2;

    /** Of hundreds of lines tried across mere noise, the likeliest stands out by up to so many standard deviations. */
    private static final double CHANCE_SIGMAS = 3.5;

    /** Fronts are not filed truer than this. Common practice. */
    private static final double TRUE_MM = 0.1;

    /** The same of their slant; of a face that is seen, shade and shadow make it uncertain besides. */
    private static final double TRUE_SLOPE = Math.toRadians(0.3);

    private static final double FACE_SLOPE = Math.toRadians(0.5);

    /** How much of the bow at most is not told apart from the line's place, the section's squareness being unknown. */
    private static final double BOW_SIGMA = 0.07;

    /** A rough place, where no line is seen. */
    static final double ROUGH_SIGMA_MM = 1.5;

    private static final double ROUGH_SLOPE = Math.toRadians(30);

    private static final List<Row> ROWS = Row.all();

    private final OutlineSides sides;
    private final Point lean;
    private final double halfMm;
    private final double bladeMm;

    /**
     * @param sides of the outline, along its axis: x towards the tip
     * @param lean of the line of sight at the handle's end, in the same frame
     */
    HandleFrontLine(OutlineSides sides, Point lean, ThicknessParallax thickness) {
        this.sides = sides;
        this.lean = lean;
        this.halfMm = thickness.handleThicknessMm() / 2;
        this.bladeMm = thickness.spineThicknessMm() / 2;
    }

    /** A line that is seen: at y = 0, its slope, and how far its middle lies before its ends. */
    private record Seen(double x, double slope, double bowMm) {}

    /**
     * Finds where the handle ends towards the blade.
     *
     * @param outline along its axis: x towards the tip
     * @param axis the motion from that frame to the ground frame
     * @param nearX roughly where the handle ends
     * @return in the outline's frame, in the mid-plane
     */
    static HandleEndLine find(
            DecodedPhoto picture,
            CameraView view,
            Plane midPlane,
            Polyline outline,
            RigidMotion axis,
            double nearX,
            ThicknessParallax thickness) {
        OutlineSides sides = new OutlineSides(outline);
        PlaneRaster raster = raster(sides, nearX);
        Mat seen = raster.rectified(picture, view, midPlane, axis);
        Imgproc.GaussianBlur(seen, seen, new Size(0, 0), BLUR_PX);
        seen.convertTo(seen, CvType.CV_32F);
        float[] bgr = new float[3 * raster.columns() * raster.rows()];
        seen.get(0, 0, bgr);
        seen.release();
        Point lean = axis.inverse().rotate(view.parallax(midPlane.pointAbove(axis.apply(new Point(nearX, 0)))));
        return new HandleFrontLine(sides, lean, thickness).in(raster, bgr, nearX);
    }

    /** What must be seen to look for a line near a place. */
    static PlaneRaster raster(OutlineSides sides, double nearX) {
        double reach = 1.5 * SEARCH_MM + HandleColourProfile.LEARN_MM;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double x = nearX - reach; x <= nearX + reach; x++) {
            low = Math.min(low, sides.lower(x));
            high = Math.max(high, sides.upper(x));
        }
        return PlaneRaster.covering(new Point(nearX - reach, low), new Point(nearX + reach, high), MM_PER_PX);
    }

    /** @param bgr the blurred picture as seen through the raster: blue, green, red of each pixel */
    HandleEndLine in(PlaneRaster raster, float[] bgr, double nearX) {
        HandleColourProfile rough = HandleColourProfile.near(nearX, raster, bgr, sides);
        double roughX = likeliest(rough, nearX, SEARCH_MM).x();
        HandleColourProfile steps = HandleColourProfile.near(roughX, raster, bgr, sides);
        double bowMm = halfMm * Math.abs(lean.x());
        return refined(steps, likeliest(steps, roughX, SEARCH_MM / 2))
                .orElseGet(() -> new HandleEndLine(nearX, 0, ROUGH_SLOPE, bowMm, ROUGH_SIGMA_MM + bowMm));
    }

    /** @param share of the whole step, which is made on it */
    private record Tried(Seen line, double share) {
        Tried orLikelier(Tried other) {
            return other.share > share ? other : this;
        }
    }

    private Seen likeliest(HandleColourProfile steps, double nearX, double searchMm) {
        return Arrays.stream(isFaceSeen() ? FACE_BOWS : BOWS)
                .parallel()
                .mapToObj(bow -> likeliest(steps, nearX, searchMm, bow * halfMm * Math.abs(lean.x())))
                .reduce(Tried::orLikelier)
                .orElseThrow()
                .line();
    }

    private Tried likeliest(HandleColourProfile steps, double nearX, double searchMm, double bowMm) {
        Tried best = new Tried(new Seen(nearX, 0, 0), Double.NEGATIVE_INFINITY);
        for (int k = -SLOPES; k <= SLOPES; k++) {
            for (double x = nearX - searchMm; x <= nearX + searchMm; x += PLACE_MM) {
                Seen line = new Seen(x, MOST_SLOPE * k / SLOPES, bowMm);
                best = best.orLikelier(new Tried(line, share(steps, line)));
            }
        }
        return best;
    }

    private boolean isFaceSeen() {
        return lean.x() >= 0;
    }

    /** How much of the whole step is made on a line, in the mean of its rows. */
    private double share(HandleColourProfile steps, Seen line) {
        double sum = 0;
        double middle = sides.middle(line.x());
        double half = sides.width(line.x()) / 2;
        for (Row row : ROWS) {
            sum += Math.max(-1, Math.min(1, steps.at(place(line, middle, half, row))));
        }
        return sum / ROWS.size();
    }

    /** Where the line is seen in one row. */
    private Point place(Seen line, double middle, double half, Row row) {
        double y = middle + row.part() * half;
        double bow = line.bowMm() * row.height();
        // What is seen of a front that turns away is its rim; where it turns to the camera, its foot on the blade's
        // flat.
        double z = isFaceSeen() ? bladeMm : -bow / lean.x();
        double foot = isFaceSeen() ? -bladeMm * lean.x() : 0;
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
            return new Row(part, Math.pow(1 - Math.pow(Math.abs(part), SECTION_EXPONENT), 1 / SECTION_EXPONENT));
        }

        static List<Row> all() {
            return DoubleStream.iterate(RIM - 1, part -> part <= 1 - RIM, part -> part + ROW)
                    .mapToObj(Row::at)
                    .toList();
        }
    }

    /** Empty where too few rows show a step, or no more of it than chance makes. */
    private Optional<HandleEndLine> refined(HandleColourProfile steps, Seen line) {
        double middle = sides.middle(line.x());
        double half = sides.width(line.x()) / 2;
        Optional<Fit> fit = fit(steps, line, middle, half);
        for (int round = 1; round < ROUNDS; round++) {
            fit = fit.flatMap(last -> fit(steps, last.line(), middle, half));
        }
        double chance = CHANCE_SIGMAS * Math.sqrt(2 * ALIKE_ROWS / ROWS.size()) / steps.apart();
        return fit.filter(last -> share(steps, last.line()) >= Math.max(LEAST_SHARE, chance))
                .map(last -> end(last, half));
    }

    /** A line through the steepest places, with the standard deviations of its place and slope. */
    private record Fit(Seen line, double sigmaMm, double slopeSigma) {}

    private Optional<Fit> fit(HandleColourProfile steps, Seen line, double middle, double half) {
        // A prior as weak as one row a millimetre, or a slope of one, off.
        double[][] normal = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        double[] right = new double[3];
        double squares = 0;
        double weights = 0;
        int rows = 0;
        for (Row across : ROWS) {
            Point place = place(line, middle, half, across);
            double off = steps.steepest(place, NEAR_MM, LEAST_STEP);
            if (Double.isNaN(off)) {
                continue;
            }
            double weight =
                    Math.min(1, steps.at(place.plus(new Point(off, 0)))) / (1 + off * off / (STRAY_MM * STRAY_MM));
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
            return Optional.empty();
        }
        SymmetricSystem system = new SymmetricSystem(normal);
        double[] by = system.solve(right);
        double[][] inverse = system.inverse();
        double scatter = Math.sqrt(ALIKE_ROWS * squares / weights);
        return Optional.of(new Fit(
                new Seen(line.x() + by[0] - by[1] * middle, line.slope() + by[1], line.bowMm() + by[2]),
                scatter * Math.sqrt(inverse[0][0]),
                scatter * Math.sqrt(inverse[1][1])));
    }

    private HandleEndLine end(Fit fit, double half) {
        double bowMm = halfMm * Math.abs(lean.x());
        // A face that is seen is shaded unevenly, and a ground blade's foot lies lower at the edge than at the spine.
        double foot = isFaceSeen() ? bladeMm / 2 * lean.x() : 0;
        double uneven = isFaceSeen() ? FACE_SLOPE : 0;
        return new HandleEndLine(
                fit.line().x(),
                fit.line().slope(),
                hypot(TRUE_SLOPE, fit.slopeSigma(), foot / half, uneven),
                bowMm,
                hypot(TRUE_MM, fit.sigmaMm(), foot, BOW_SIGMA * bowMm));
    }

    private static double hypot(double... parts) {
        double squares = 0;
        for (double part : parts) {
            squares += part * part;
        }
        return Math.sqrt(squares);
    }
}
