package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
 *   <li>search the line of greatest mean share over position, slope and thickness; shares are limited to 1 so that a
 *       glint does not dominate;
 *   <li>repeat both, with the colours sampled beside that line;
 *   <li>fit the line by weighted least squares to the greatest share of each row near it.
 * </ol>
 *
 * <p>A thick front in an oblique view shows the rim of its section: the point of the superellipse at height z above the
 * mid-plane appears displaced by z times the lean of the line of sight, along the knife as well as across. Where the
 * face of the front turns away from the camera, that rim hides the rest, and the handle's colours end at it. Where the
 * face is visible, they end at the rim or at the face's foot on the blade, as the face is lit; both are searched for as
 * one figure whose parts are held together by the geometry. Unknown are the front's place, its slope and its thickness,
 * for which the handle's is a prior.
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

    /** Number of rows. */
    private static final double ROWS = 2 * (1 - MARGIN) / ROW;

    /** Greatest slope of a front: common practice is to file them square. */
    private static final double MOST_SLOPE = Math.tan(Math.toRadians(8));

    /** Slopes tried to either side: neighbours lie well within {@link #NEAR_MM} of each other; chosen by eye. */
    private static final int SLOPES = 5;

    /** Distance of the positions tried, for the same reason. */
    private static final double POSITION_MM = 0.2;

    /** Thicknesses of the front that are tried, as parts of the handle's. Common practice. */
    private static final double[] THICKNESSES = {0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1, 1.05};

    /** Standard deviation of a front's thickness, as a part of the handle's: few thin it much. Common practice. */
    private static final double THICKNESS_SIGMA = 0.1;

    /** Distance behind the front at which the width of its section is measured; chosen by eye. */
    private static final double BEHIND_MM = 1;

    /** Distance before the front within which the outline must be wide enough for a row; chosen by eye. */
    private static final double BEFORE_MM = 1.5;

    /**
     * Mean half thickness of a blade over its width, as a part of that of its spine: it is ground over half of the
     * width. Common practice.
     */
    private static final double FOOT_PART = 0.75;

    /** Mean bow of a rim over its width, as a part of the greatest: that of an exponent of 2.6. */
    private static final double RIM_PART = 0.85;

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

    /** Least mean share of a rim or a foot: twice the tenth that a colour changing evenly over the sample has. */
    private static final double LEAST_SHARE = 0.2;

    /** Mean share of the best of hundreds of lines across noise, in standard deviations (normal order statistics). */
    private static final double CHANCE_SIGMAS = 3.5;

    /** Standard deviation of a front from a straight line. Common practice. */
    private static final double FRONT_SIGMA_MM = 0.1;

    /** Standard deviation of its slope. Common practice. */
    private static final double FRONT_SLOPE = Math.toRadians(0.3);

    /** Standard deviation of the approximate end, used where no line is found; chosen by eye. */
    static final double ROUGH_SIGMA_MM = 1.5;

    /** Standard deviation of the slope where no line is found; chosen by eye. */
    private static final double ROUGH_SLOPE = Math.toRadians(30);

    private final OutlineSides sides;
    private final Point lean;
    private final ThicknessParallax thickness;
    private final double footMm;

    /**
     * Prepares the search.
     *
     * @param sides of the outline, along its axis: x towards the tip
     * @param lean of the line of sight at the handle's end, in the same frame
     */
    HandleFrontLine(OutlineSides sides, Point lean, ThicknessParallax thickness) {
        this.sides = sides;
        this.lean = lean;
        this.thickness = thickness;
        this.footMm = FOOT_PART * thickness.spineThicknessMm() / 2;
    }

    /**
     * The front of a handle.
     *
     * @param x at y = 0, in the mid-plane
     * @param slope dx/dy
     * @param part of the handle's thickness that is the front's
     * @param exponent of its section
     */
    private record Line(double x, double slope, double part, double exponent) {}

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
        double bowMm = ThicknessParallax.FRONT_PART * thickness.handleThicknessMm() / 2 * Math.abs(lean.x());
        // Behind a rim that hides the blade, the handle's colours end farther to the tip than the handle.
        double seenMm = isFaceVisible() ? 0 : RIM_PART * bowMm;
        double faceMm = isFaceVisible() ? RIM_PART * bowMm : 0;
        HandleColourProfile rough = HandleColourProfile.near(nearX - faceMm, nearX, raster, bgr, sides);
        double roughX = bestLine(rough, nearX - seenMm, SEARCH_MM).x();
        HandleColourProfile steps =
                HandleColourProfile.near(roughX + seenMm - faceMm, roughX + seenMm, raster, bgr, sides);
        return refine(steps, bestLine(steps, roughX, SEARCH_MM / 2))
                .orElseGet(() -> new HandleEndLine(
                        nearX - seenMm,
                        0,
                        ROUGH_SLOPE,
                        ROUGH_SIGMA_MM + bowMm / 2,
                        new HandleEndLine.Rim(ThicknessParallax.FRONT_PART, THICKNESS_SIGMA, bowMm, 0, 0, bowMm)));
    }

    /** @param share mean share of the step on the line */
    private record Candidate(Line line, double share) {
        Candidate orBetter(Candidate other) {
            return other.share > share ? other : this;
        }
    }

    private Line bestLine(HandleColourProfile steps, double nearX, double searchMm) {
        return Arrays.stream(THICKNESSES)
                .parallel()
                .mapToObj(part -> bestLine(steps, nearX, searchMm, part))
                .reduce(Candidate::orBetter)
                .orElseThrow()
                .line();
    }

    private Candidate bestLine(HandleColourProfile steps, double nearX, double searchMm, double part) {
        double exponent = thickness.handleSection().exponent();
        Candidate best = new Candidate(new Line(nearX, 0, part, exponent), Double.NEGATIVE_INFINITY);
        for (int k = -SLOPES; k <= SLOPES; k++) {
            for (double x = nearX - searchMm; x <= nearX + searchMm; x += POSITION_MM) {
                Line line = new Line(x, MOST_SLOPE * k / SLOPES, part, exponent);
                best = best.orBetter(new Candidate(line, share(steps, line)));
            }
        }
        return best;
    }

    private boolean isFaceVisible() {
        return lean.x() >= 0;
    }

    /**
     * Returns the mean share of the step over the rows of a line, each limited to ±1. Of a visible face rim and foot
     * count, whichever way the colours change there.
     */
    private double share(HandleColourProfile steps, Line line) {
        double rim = 0;
        double foot = 0;
        for (Place place : places(line)) {
            double share = Math.max(-1, Math.min(1, steps.at(place.at())));
            rim += place.isRim() ? share : 0;
            foot += place.isRim() ? 0 : share;
        }
        return (isFaceVisible() ? Math.abs(rim) + Math.abs(foot) : rim) / ROWS;
    }

    /**
     * A place at which a front appears.
     *
     * @param acrossMm distance from the handle's middle
     * @param perThickness displacement along the knife for a front as thick as the handle; 0 at the foot
     */
    private record Place(Point at, double acrossMm, double perThickness) {
        boolean isRim() {
            return perThickness != 0;
        }
    }

    /** Returns where a front appears: its rim and, where its face is visible, its foot on the blade's flat. */
    private List<Place> places(Line line) {
        double seenX = line.x() - BEHIND_MM;
        double middle = sides.middle(seenX);
        double halfMm = thickness.frontHalfMm(sides.width(seenX) / 2, lean, line.part());
        double n = line.exponent();
        List<Place> places = new ArrayList<>();
        for (double part = MARGIN - 1; part <= 1 - MARGIN; part += ROW) {
            double across = part * halfMm;
            double most = thickness.handleThicknessMm() / 2 * Math.pow(1 - Math.pow(Math.abs(part), n), 1 / n);
            double z = line.part() * most;
            // A rim nearer to the foot than steps are told apart is left to the foot.
            if (!isFaceVisible() || (z - footMm) * lean.x() > 2 * NEAR_MM) {
                add(places, line, middle, across, z, -most * lean.x());
            }
            if (isFaceVisible()) {
                add(places, line, middle, across, footMm, 0);
            }
        }
        return places;
    }

    private void add(List<Place> to, Line line, double middle, double across, double z, double perThickness) {
        double y = middle + across;
        Point at = new Point(line.x() + line.slope() * y - z * lean.x(), y - z * lean.y());
        double before = at.x() + BEFORE_MM;
        if (at.y() < sides.upper(before) && at.y() > sides.lower(before)) {
            to.add(new Place(at, across, perThickness));
        }
    }

    /** Fits the line; empty where too few rows show a step, or its mean share is within chance. */
    private Optional<HandleEndLine> refine(HandleColourProfile steps, Line line) {
        double chance = CHANCE_SIGMAS * Math.sqrt(2 * CORRELATED_ROWS / ROWS) / steps.separation();
        double least = Math.max(LEAST_SHARE, chance);
        double spread = thickness.handleSection().spread();
        Optional<Fit> round = refined(steps, line, Math.max(2, line.exponent() - spread));
        Optional<Fit> square = refined(steps, line, line.exponent() + spread);
        return refined(steps, line, line.exponent())
                .filter(last -> share(steps, last.line()) >= least)
                .map(fit ->
                        end(fit, round.orElse(fit).line(), square.orElse(fit).line()));
    }

    private Optional<Fit> refined(HandleColourProfile steps, Line line, double exponent) {
        Optional<Fit> fit = fit(steps, new Line(line.x(), line.slope(), line.part(), exponent));
        for (int k = 1; k < ROUNDS; k++) {
            fit = fit.flatMap(last -> fit(steps, last.line()));
        }
        return fit;
    }

    /** A fitted line with the standard deviations of its position at the outline, its slope and thickness. */
    private record Fit(Line line, double sigmaMm, double slopeSigma, double partSigma) {}

    private Optional<Fit> fit(HandleColourProfile steps, Line line) {
        double middle = sides.middle(line.x() - BEHIND_MM);
        double half = sides.width(line.x() - BEHIND_MM) / 2;
        double[][] normal = new double[3][3];
        double[] right = new double[3];
        double squares = 0;
        double weights = 0;
        int rows = 0;
        int rimSign = isFaceVisible() ? sign(steps, line, true) : 1;
        int footSign = sign(steps, line, false);
        for (Place place : places(line)) {
            int sign = place.isRim() ? rimSign : footSign;
            double off = steps.steepest(place.at(), NEAR_MM, LEAST_STEP, sign);
            if (Double.isNaN(off)) {
                continue;
            }
            double weight = Math.min(1, sign * steps.at(place.at().plus(new Point(off, 0))))
                    / (1 + off * off / (OUTLIER_MM * OUTLIER_MM));
            double[] row = {1, place.acrossMm(), place.perThickness()};
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
        // Rows are independent measurements of about this variance; the priors count in the same unit.
        double variance = CORRELATED_ROWS * (squares / weights + FRONT_SIGMA_MM * FRONT_SIGMA_MM);
        double prior = variance / (THICKNESS_SIGMA * THICKNESS_SIGMA);
        normal[0][0] += 1;
        normal[1][1] += 1;
        normal[2][2] += prior;
        right[2] += prior * (ThicknessParallax.FRONT_PART - line.part());
        SymmetricSystem system = new SymmetricSystem(normal);
        double[] by = system.solve(right);
        double[][] inverse = system.inverse();
        double atOutline = inverse[0][0] + half * half * inverse[1][1];
        return Optional.of(new Fit(
                new Line(line.x() + by[0] - by[1] * middle, line.slope() + by[1], line.part() + by[2], line.exponent()),
                Math.sqrt(variance * atOutline),
                Math.sqrt(variance * inverse[1][1]),
                Math.sqrt(variance * inverse[2][2])));
    }

    /**
     * Returns the result of a fit.
     *
     * @param round the line fitted with the roundest section that may be
     * @param square the line fitted with the squarest
     */
    private HandleEndLine end(Fit fit, Line round, Line square) {
        Line line = fit.line();
        double seenX = line.x() - BEHIND_MM;
        double half = sides.width(seenX) / 2;
        // The foot of a visible face on a ground blade lies lower at the edge than at the spine.
        double foot = isFaceVisible() ? footMm / 2 * lean.x() : 0;
        ThicknessParallax.Shift upper = thickness.frontCorner(half, lean, line.part(), 1);
        ThicknessParallax.Shift lower = thickness.frontCorner(half, lean, line.part(), -1);
        return new HandleEndLine(
                line.x(),
                line.slope(),
                hypot(FRONT_SLOPE, fit.slopeSigma(), foot / half),
                hypot(
                        FRONT_SIGMA_MM,
                        fit.sigmaMm(),
                        foot,
                        ThicknessParallax.UNIFORM_SIGMA * (at(square, seenX) - at(round, seenX)) / 2),
                new HandleEndLine.Rim(
                        line.part(),
                        hypot(fit.partSigma(), ThicknessParallax.UNIFORM_SIGMA * (square.part() - round.part()) / 2),
                        line.part() * thickness.handleThicknessMm() / 2 * Math.abs(lean.x()),
                        upper.outMm(),
                        lower.outMm(),
                        Math.max(upper.outSigmaMm(), lower.outSigmaMm())));
    }

    /** Returns 1 where the colours change at the rim, or at the foot, as from handle to blade; −1 where otherwise. */
    private int sign(HandleColourProfile steps, Line line, boolean rim) {
        double sum = places(line).stream()
                .filter(place -> place.isRim() == rim)
                .mapToDouble(place -> steps.at(place.at()))
                .sum();
        return sum < 0 ? -1 : 1;
    }

    /** Returns x of a line in the handle's middle. */
    private double at(Line line, double seenX) {
        return line.x() + line.slope() * sides.middle(seenX);
    }

    private static double hypot(double... parts) {
        double squares = 0;
        for (double part : parts) {
            squares += part * part;
        }
        return Math.sqrt(squares);
    }
}
