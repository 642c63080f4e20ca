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
 * Finds the line across a knife at which its handle ends, in the photo between both sides of the outline.
 *
 * <p>Made for a front that is nearly straight and square to the knife, and for a handle or guard that differs from the
 * blade in colour or brightness. The line is fitted to many rows across the knife, so it is found even where the
 * outline has no corner at its ends. The steps:
 *
 * <ol>
 *   <li>compute the share of the step from the handle's colour to the blade's at each pixel
 *       ({@link HandleColourProfile});
 *   <li>search the line of greatest mean share over position, slope and bow; shares are limited to 1 so that a glint
 *       does not dominate;
 *   <li>repeat both, with the colours sampled beside that line;
 *   <li>fit the line by weighted least squares to the greatest share of each row near it.
 * </ol>
 *
 * <p>A thick front in an oblique view is bowed: the edge of its section at height z above the mid-plane appears
 * displaced by z times the lean of the line of sight, most in the middle of the knife and not at all at the outline.
 * Where the face of the front turns away from the camera, the edge of the section hides the face's foot. Where the face
 * is visible, edge, face and the shadow at its foot all show, and the bow cannot be predicted; the ends of the line are
 * not affected.
 */
final class HandleFrontLine {
    /** Resolution of the rectified photo, about that of the photo or finer; chosen by eye. */
    static final double MM_PER_PX = 0.1;

    /** Standard deviation of its blur against the photo's noise; chosen by eye. */
    private static final double BLUR_PX = 1.5;

    /** Greatest error of the approximate end; half of it bounds the error of the line found first. By eye. */
    private static final double SEARCH_MM = 3;

    /** Margin at the outline, as a part of half the width; chosen by eye. */
    private static final double MARGIN = 0.025;

    /** Distance of rows, as a part of half the width; chosen by eye. */
    private static final double ROW = 0.02;

    /** Greatest slope of a front: common practice is to file them square. */
    private static final double MOST_SLOPE = Math.tan(Math.toRadians(8));

    /** Slopes tried to either side: neighbours lie well within {@link #NEAR_MM} of each other; chosen by eye. */
    private static final int SLOPES = 5;

    /** Distance of the positions tried, for the same reason. */
    private static final double POSITION_MM = 0.2;

    /** Exponent of the front's superelliptic section, between an ellipse and a rounded slab. Common practice. */
    private static final double SECTION_EXPONENT = 2.5;

    /** Thicknesses of the front that are tried, as parts of the handle's. Common practice. */
    private static final double[] BOWS = {0.4, 0.6, 0.8, 1};

    /** Bows tried where the face is visible: its upper edge lies behind the foot, its shadow before it; by eye. */
    private static final double[] FACE_BOWS = {-0.8, -0.4, 0, 0.4};

    /** Iterations of the least squares fit; it converges in fewer. Chosen by eye. */
    private static final int ROUNDS = 8;

    /** Greatest distance from the line at which a row's greatest share belongs to it; chosen by eye. */
    private static final double NEAR_MM = 0.5;

    /** Scale of the Cauchy weight of that distance; chosen by eye. */
    private static final double OUTLIER_MM = 0.2;

    /** Least share of the step of a row that takes part in the fit; chosen by eye. */
    private static final double LEAST_STEP = 0.3;

    /** Least number of such rows; chosen by eye. */
    private static final int LEAST_ROWS = 12;

    /** Number of neighbouring rows whose errors are correlated by the blur; chosen by eye. */
    private static final double CORRELATED_ROWS = 3;

    /** Least mean share of a line: twice the tenth that a colour changing evenly over the sampled length has. */
    private static final double LEAST_SHARE = 0.2;

    /** Mean share of the best of hundreds of lines across noise, in standard deviations (normal order statistics). */
    private static final double CHANCE_SIGMAS = 3.5;

    /** Standard deviation of a front from a straight line. Common practice. */
    private static final double FRONT_SIGMA_MM = 0.1;

    /** Standard deviation of its slope. Common practice. */
    private static final double FRONT_SLOPE = Math.toRadians(0.3);

    /** Additional standard deviation of the slope of a visible face, by shade and shadow; chosen by eye. */
    private static final double FACE_SLOPE = Math.toRadians(0.5);

    /** Part of the greatest bow that cannot be separated from the position, the section being unknown; by eye. */
    private static final double BOW_SIGMA = 0.07;

    /** Standard deviation of the approximate end, used where no line is found; chosen by eye. */
    static final double ROUGH_SIGMA_MM = 1.5;

    /** Standard deviation of the slope where no line is found; chosen by eye. */
    private static final double ROUGH_SLOPE = Math.toRadians(30);

    private static final List<Row> ROWS = Row.all();

    private final OutlineSides sides;
    private final Point lean;
    private final double halfMm;
    private final double bladeMm;

    /**
     * Prepares the search.
     *
     * @param sides of the outline, along its axis: x towards the tip
     * @param lean of the line of sight at the handle's end, in the same frame
     */
    HandleFrontLine(OutlineSides sides, Point lean, ThicknessParallax thickness) {
        this.sides = sides;
        this.lean = lean;
        this.halfMm = thickness.handleThicknessMm() / 2;
        this.bladeMm = thickness.spineThicknessMm() / 2;
    }

    /**
     * A line across the knife.
     *
     * @param x at y = 0
     * @param slope dx/dy
     * @param bowMm how far its middle lies before its ends
     */
    private record Line(double x, double slope, double bowMm) {}

    /**
     * Finds the end of the handle towards the blade.
     *
     * @param outline along its axis: x towards the tip
     * @param axis the motion from that frame to the ground frame
     * @param nearX approximate end of the handle
     * @return the line in the outline's frame, in the mid-plane; where none is found, the approximate end with its
     *     uncertainty
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
        Point lean = axis.inverse().rotate(view.parallax(midPlane, axis.apply(new Point(nearX, 0))));
        return new HandleFrontLine(sides, lean, thickness).find(raster, bgr, nearX);
    }

    /** Returns the raster that the search near an approximate end needs. */
    static PlaneRaster raster(OutlineSides sides, double nearX) {
        double reach = 1.5 * SEARCH_MM + HandleColourProfile.SAMPLED_MM;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double x = nearX - reach; x <= nearX + reach; x++) {
            low = Math.min(low, sides.lower(x));
            high = Math.max(high, sides.upper(x));
        }
        return PlaneRaster.covering(new Point(nearX - reach, low), new Point(nearX + reach, high), MM_PER_PX);
    }

    /** @param bgr the rectified and blurred photo: blue, green, red of each pixel */
    HandleEndLine find(PlaneRaster raster, float[] bgr, double nearX) {
        HandleColourProfile rough = HandleColourProfile.near(nearX, raster, bgr, sides);
        double roughX = bestLine(rough, nearX, SEARCH_MM).x();
        HandleColourProfile steps = HandleColourProfile.near(roughX, raster, bgr, sides);
        double bowMm = halfMm * Math.abs(lean.x());
        return refine(steps, bestLine(steps, roughX, SEARCH_MM / 2))
                .orElseGet(() -> new HandleEndLine(nearX, 0, ROUGH_SLOPE, bowMm, ROUGH_SIGMA_MM + bowMm));
    }

    /** @param share mean share of the step on the line */
    private record Candidate(Line line, double share) {
        Candidate orBetter(Candidate other) {
            return other.share > share ? other : this;
        }
    }

    private Line bestLine(HandleColourProfile steps, double nearX, double searchMm) {
        return Arrays.stream(isFaceVisible() ? FACE_BOWS : BOWS)
                .parallel()
                .mapToObj(bow -> bestLine(steps, nearX, searchMm, bow * halfMm * Math.abs(lean.x())))
                .reduce(Candidate::orBetter)
                .orElseThrow()
                .line();
    }

    private Candidate bestLine(HandleColourProfile steps, double nearX, double searchMm, double bowMm) {
        Candidate best = new Candidate(new Line(nearX, 0, 0), Double.NEGATIVE_INFINITY);
        for (int k = -SLOPES; k <= SLOPES; k++) {
            for (double x = nearX - searchMm; x <= nearX + searchMm; x += POSITION_MM) {
                Line line = new Line(x, MOST_SLOPE * k / SLOPES, bowMm);
                best = best.orBetter(new Candidate(line, share(steps, line)));
            }
        }
        return best;
    }

    private boolean isFaceVisible() {
        return lean.x() >= 0;
    }

    /** Returns the mean share of the step over the rows of a line, each limited to ±1. */
    private double share(HandleColourProfile steps, Line line) {
        double sum = 0;
        double middle = sides.middle(line.x());
        double half = sides.width(line.x()) / 2;
        for (Row row : ROWS) {
            sum += Math.max(-1, Math.min(1, steps.at(place(line, middle, half, row))));
        }
        return sum / ROWS.size();
    }

    /** Returns where a line appears in a row. */
    private Point place(Line line, double middle, double half, Row row) {
        double y = middle + row.part() * half;
        double bow = line.bowMm() * row.height();
        // Visible is the edge of the section or, where the face is visible, its foot on the blade's flat.
        double z = isFaceVisible() ? bladeMm : -bow / lean.x();
        double foot = isFaceVisible() ? -bladeMm * lean.x() : 0;
        return new Point(line.x() + line.slope() * y + bow + foot, y - z * lean.y());
    }

    /**
     * A row along the knife.
     *
     * @param part distance from the middle in half widths, from −1 to 1
     * @param height of the front's section there, as a part of its greatest
     */
    private record Row(double part, double height) {
        static Row at(double part) {
            return new Row(part, Math.pow(1 - Math.pow(Math.abs(part), SECTION_EXPONENT), 1 / SECTION_EXPONENT));
        }

        static List<Row> all() {
            return DoubleStream.iterate(MARGIN - 1, part -> part <= 1 - MARGIN, part -> part + ROW)
                    .mapToObj(Row::at)
                    .toList();
        }
    }

    /** Fits the line; empty where too few rows show a step, or its mean share is within chance. */
    private Optional<HandleEndLine> refine(HandleColourProfile steps, Line line) {
        double middle = sides.middle(line.x());
        double half = sides.width(line.x()) / 2;
        Optional<Fit> fit = fit(steps, line, middle, half);
        for (int round = 1; round < ROUNDS; round++) {
            fit = fit.flatMap(last -> fit(steps, last.line(), middle, half));
        }
        double chance = CHANCE_SIGMAS * Math.sqrt(2 * CORRELATED_ROWS / ROWS.size()) / steps.separation();
        return fit.filter(last -> share(steps, last.line()) >= Math.max(LEAST_SHARE, chance))
                .map(last -> end(last, half));
    }

    /** A fitted line with the standard deviations of its position and slope. */
    private record Fit(Line line, double sigmaMm, double slopeSigma) {}

    private Optional<Fit> fit(HandleColourProfile steps, Line line, double middle, double half) {
        // A weak prior, as of one row with weight 1, keeps the system regular.
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
                    Math.min(1, steps.at(place.plus(new Point(off, 0)))) / (1 + off * off / (OUTLIER_MM * OUTLIER_MM));
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
        double scatter = Math.sqrt(CORRELATED_ROWS * squares / weights);
        return Optional.of(new Fit(
                new Line(line.x() + by[0] - by[1] * middle, line.slope() + by[1], line.bowMm() + by[2]),
                scatter * Math.sqrt(inverse[0][0]),
                scatter * Math.sqrt(inverse[1][1])));
    }

    private HandleEndLine end(Fit fit, double half) {
        double bowMm = halfMm * Math.abs(lean.x());
        // A visible face is shaded unevenly, and its foot on a ground blade lies lower at the edge than at the spine.
        double foot = isFaceVisible() ? bladeMm / 2 * lean.x() : 0;
        double uneven = isFaceVisible() ? FACE_SLOPE : 0;
        return new HandleEndLine(
                fit.line().x(),
                fit.line().slope(),
                hypot(FRONT_SLOPE, fit.slopeSigma(), foot / half, uneven),
                bowMm,
                hypot(FRONT_SIGMA_MM, fit.sigmaMm(), foot, BOW_SIGMA * bowMm));
    }

    private static double hypot(double... parts) {
        double squares = 0;
        for (double part : parts) {
            squares += part * part;
        }
        return Math.sqrt(squares);
    }
}
