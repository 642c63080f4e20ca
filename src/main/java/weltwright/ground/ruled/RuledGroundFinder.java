package weltwright.ground.ruled;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.opencv.core.Core;
import org.opencv.core.Mat;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.Plane;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.ground.EdgeProfileLocation;
import weltwright.ground.GroundLabel;
import weltwright.ground.GroundLines;
import weltwright.ground.GroundObservation;
import weltwright.ground.LocatedGround;
import weltwright.ground.ruled.CrossingLattice.Cell;
import weltwright.ground.ruled.CrossingLattice.Expected;
import weltwright.image.DecodedPhoto;
import weltwright.image.InterpolatedChannel;
import weltwright.message.Messages;

/**
 * Finds a ruled ground in a picture, such as a cutting mat or squared paper, and its crossings to a fraction of a
 * pixel.
 *
 * <p>Made for two perpendicular families of equally spaced lines, lighter or darker than the ground, some of them
 * bolder; for a knife that hides part of it, numbers, scratches, the ground's edge and a table around it. The steps:
 *
 * <ol>
 *   <li>estimate lattices in a few patches of a reduced picture ({@link LatticeSeed});
 *   <li>grow the first good one on the full picture ({@link LatticeGrowth});
 *   <li>fit a view to the crossings, and search more of them where it predicts them beyond the reach of unbroken lines;
 *   <li>drop crossings that do not fit the view.
 * </ol>
 *
 * The pitch must be given, since a picture does not determine scale. Neighbouring lines, bold or not, are one pitch
 * apart. The result are crossings in pixels; {@link ViewSolver} computes camera and pose.
 */
public final class RuledGroundFinder {
    private static final Messages TEXTS = Messages.of(RuledGroundFinder.class);

    /** Standard deviation of the ratio of a ruling's pitches along x and y. Common practice. */
    public static final double STRETCH_SIGMA = 0.0005;

    /**
     * Longer side from which a picture is fine enough: lines 0.5 mm wide on a ground as large as a table are two pixels
     * wide. A finer picture locates them no better, as its pixels are noisier. Chosen by eye.
     */
    private static final int FINE_LONG_SIDE_PX = 1900;

    /** Least number of crossings; fewer may be a pattern on something else. Chosen by eye. */
    private static final int FEWEST_CROSSINGS = 30;

    /** Least number of lines of each family. Chosen by eye. */
    private static final int FEWEST_LINES = 4;

    /** Number of crossings from which no other seeds are tried. Chosen by eye. */
    private static final int PLENTY = 120;

    /** Number of crossings that the check's view is fitted to. Chosen by eye. */
    private static final int SAMPLE = 150;

    /**
     * Focal length over the picture's diagonal of a phone's main camera. The check uses it rather than the user's
     * prior, which may be wrong. Common practice.
     */
    private static final double USUAL_FOCAL_PER_DIAGONAL = 27 / Math.hypot(36, 24);

    /** Standard deviation of its logarithm. Chosen by eye. */
    private static final double USUAL_FOCAL_SIGMA = 0.3;

    /** Greatest distance of a crossing from the fit, relative to the pitch; allows for uneven mats. Chosen by eye. */
    private static final double GREATEST_MISFIT = 0.08;

    /** Least part of the crossings that fit; with fewer, lines were miscounted or the ground is bent. Chosen by eye. */
    private static final double LEAST_FITTING = 0.9;

    private final DecodedPhoto picture;
    private final double pitchXMm;
    private final double pitchYMm;

    private RuledGroundFinder(DecodedPhoto picture, double pitchXMm, double pitchYMm) {
        this.picture = picture;
        this.pitchXMm = pitchXMm;
        this.pitchYMm = pitchYMm;
    }

    /**
     * A ruled ground. Its frame has x along the more horizontal lines, to the right, y upwards in the picture, z to the
     * camera and its origin at a crossing near the middle of the visible part.
     *
     * @param crossings the crossings with all four arms visible, as a rule hundreds
     * @param extent convex hull of all crossings, in the ground frame
     * @param linesLighter whether lines are lighter than the ground
     * @param lineWidthPx median width of the lines
     */
    public record Found(List<ControlPoint> crossings, Region extent, boolean linesLighter, double lineWidthPx) {
        /** Length of a profile from the middle of a line, relative to the pitch. Chosen by eye. */
        private static final double PROFILE_LENGTH = 0.3;

        /** Half the length over which a profile is averaged along the line, relative to the pitch. Chosen by eye. */
        private static final double HALF_EDGE = 0.25;

        /** Relative standard deviation of the pitch of mats and printed squares. Common practice. */
        private static final double SCALE_SIGMA = 0.0007;

        /** Converts from a picture of half the resolution. */
        private Found doubled() {
            List<ControlPoint> doubled = crossings.stream()
                    .map(crossing -> new ControlPoint(
                            crossing.onGround(), crossing.pixel().times(2).plus(new Point(0.5, 0.5))))
                    .toList();
            return new Found(doubled, extent, linesLighter, 2 * lineWidthPx);
        }

        /**
         * Returns the ground to solve the view from.
         *
         * @param pitchMm distance of the lines along x and y
         */
        public LocatedGround located(double pitchMm) {
            return new LocatedGround(
                    crossings,
                    ViewSolver.LEAST_PIXEL_SIGMA,
                    STRETCH_SIGMA,
                    SCALE_SIGMA,
                    observation(pitchMm),
                    groundLines(pitchMm));
        }

        private GroundObservation observation(double pitchMm) {
            int all = (int) Math.round(extent.area().getArea() / (pitchMm * pitchMm));
            return new GroundObservation(edges(pitchMm), crossings.size(), Math.max(all, crossings.size()));
        }

        private List<EdgeProfileLocation> edges(double pitchMm) {
            return ControlPoint.neighbours(crossings, pitchMm).stream()
                    .map(pair -> new EdgeProfileLocation(
                            pair.middle(),
                            pair.along().left().times(PROFILE_LENGTH * pitchMm),
                            HALF_EDGE * pitchMm,
                            true))
                    .toList();
        }

        private GroundLines groundLines(double pitchMm) {
            Envelope box = extent.area().getEnvelopeInternal();
            List<Polyline> lines = new ArrayList<>();
            for (double x = Math.ceil(box.getMinX() / pitchMm) * pitchMm; x <= box.getMaxX(); x += pitchMm) {
                inside(new Point(x, box.getMinY() - 1), new Point(x, box.getMaxY() + 1))
                        .ifPresent(lines::add);
            }
            for (double y = Math.ceil(box.getMinY() / pitchMm) * pitchMm; y <= box.getMaxY(); y += pitchMm) {
                inside(new Point(box.getMinX() - 1, y), new Point(box.getMaxX() + 1, y))
                        .ifPresent(lines::add);
            }
            return new GroundLines(lines, new GroundLabel.Ruling(pitchMm));
        }

        /** Clips a line to the visible part. */
        private Optional<Polyline> inside(Point from, Point to) {
            Coordinate[] part = extent.area()
                    .intersection(Polyline.open(List.of(from, to)).lineString())
                    .getCoordinates();
            return part.length < 2
                    ? Optional.empty()
                    : Optional.of(Polyline.open(List.of(Point.of(part[0]), Point.of(part[part.length - 1]))));
        }
    }

    /**
     * Finds a ruled ground of known pitch.
     *
     * @param pitchXMm distance of the vertical lines
     * @param pitchYMm distance of the horizontal lines
     * @throws UserFacingException where there is no such ground, or too little of it is visible
     */
    public static Found find(DecodedPhoto picture, double pitchXMm, double pitchYMm) {
        return search(picture, pitchXMm, pitchYMm)
                .orElseThrow(RuledGroundFinder::noRuledGround)
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("ruled-ground-finder.the-lines-that-are-to"),
                        TEXTS.text("ruled-ground-finder.lay-the-mat-or-the")));
    }

    /**
     * Finds a ruled ground of equal pitches; empty where there is none.
     *
     * @param pitchMm distance of the lines; 1 where it is unknown, which makes it the unit of length
     */
    public static Optional<Found> lookFor(DecodedPhoto picture, double pitchMm) {
        return search(picture, pitchMm, pitchMm).flatMap(found -> found);
    }

    /**
     * Searches the picture at half the resolution where that is fine enough, else, or where lines are too dense for it,
     * at full resolution.
     *
     * @return empty where there is no large lattice; an inner empty value where it is not evenly spaced
     */
    private static Optional<Optional<Found>> search(DecodedPhoto picture, double pitchXMm, double pitchYMm) {
        if (Math.max(picture.widthPx(), picture.heightPx()) >= 2 * FINE_LONG_SIDE_PX) {
            Optional<Found> inHalf = search(picture.half(), pitchXMm, pitchYMm).flatMap(found -> found);
            if (inHalf.isPresent()) {
                return Optional.of(inHalf.map(Found::doubled));
            }
        }
        return grown(picture)
                .map(growth -> new RuledGroundFinder(picture, pitchXMm, pitchYMm).found(growth))
                .filter(found -> found.isEmpty() || found.get().crossings().size() >= FEWEST_CROSSINGS);
    }

    private static Optional<LatticeGrowth> grown(DecodedPhoto picture) {
        Optional<LatticeGrowth> grown = grown(picture.grey(), picture.levels());
        // Lines as bright as the ground, such as red on green, are visible in single channels only.
        for (int channel = 0; grown.isEmpty() && channel < 3; channel++) {
            Mat colour = new Mat();
            Core.extractChannel(picture.bgr(), colour, channel);
            grown = grown(colour, new InterpolatedChannel(colour));
            colour.release();
        }
        return grown;
    }

    /** Returns the first lattice with plenty of crossings, or else the largest one, if it is large enough. */
    private static Optional<LatticeGrowth> grown(Mat channel, InterpolatedChannel levels) {
        LatticeGrowth best = null;
        try (Stream<LatticeSeed> all = LatticeSeed.in(channel)) {
            Iterator<LatticeSeed> seeds = all.iterator();
            while (seeds.hasNext() && (best == null || best.lattice().size() < PLENTY)) {
                LatticeGrowth growth = LatticeGrowth.from(seeds.next(), levels);
                best = best == null || growth.lattice().size() > best.lattice().size() ? growth : best;
            }
        }
        return Optional.ofNullable(best).filter(growth -> isEnough(growth.lattice()));
    }

    private static boolean isEnough(CrossingLattice lattice) {
        return lattice.size() >= FEWEST_CROSSINGS
                && lattice.columns() >= FEWEST_LINES
                && lattice.rows() >= FEWEST_LINES;
    }

    private static UserFacingException noRuledGround() {
        return new UserFacingException(
                TEXTS.text("ruled-ground-finder.no-ruled-ground-is-to"),
                TEXTS.text("ruled-ground-finder.photograph-the-knife-on-a"));
    }

    /** Fits a view to a lattice; empty where its lines are not evenly spaced. */
    private Optional<Found> found(LatticeGrowth growth) {
        CrossingLattice lattice = growth.lattice();
        CameraView fit = fit(lattice);
        if (growth.growBeyond(expectedBy(fit, lattice))) {
            fit = fit(lattice);
        }
        Cell middle = lattice.middle();
        List<Point> all = new ArrayList<>();
        List<ControlPoint> whole = new ArrayList<>();
        for (Map.Entry<Cell, LineCrossing> entry : lattice.inOrder()) {
            ControlPoint reference = reference(entry, middle);
            if (fit.intersection(reference.pixel(), Plane.GROUND).distance(reference.onGround()) < greatestMisfitMm()) {
                all.add(reference.onGround());
                if (entry.getValue().arms() == 4) {
                    whole.add(reference);
                }
            }
        }
        return all.size() < LEAST_FITTING * lattice.size()
                ? Optional.empty()
                : Optional.of(new Found(whole, Region.hull(all), growth.sign() > 0, growth.lineWidthPx()));
    }

    private double greatestMisfitMm() {
        return GREATEST_MISFIT * Math.min(pitchXMm, pitchYMm);
    }

    private Point place(Cell cell, Cell middle) {
        return new Point((cell.column() - middle.column()) * pitchXMm, (cell.row() - middle.row()) * pitchYMm);
    }

    private ControlPoint reference(Map.Entry<Cell, LineCrossing> entry, Cell middle) {
        return new ControlPoint(place(entry.getKey(), middle), entry.getValue().pixel());
    }

    private CameraView fit(CrossingLattice lattice) {
        Cell middle = lattice.middle();
        List<Map.Entry<Cell, LineCrossing>> all = lattice.inOrder();
        List<ControlPoint> sample = new ArrayList<>();
        double step = Math.max(1, (double) all.size() / SAMPLE);
        for (double k = 0; k < all.size(); k += step) {
            sample.add(reference(all.get((int) k), middle));
        }
        double focalPx = USUAL_FOCAL_PER_DIAGONAL * picture.diagonalPx();
        return ViewSolver.solve(
                        sample,
                        picture.widthPx(),
                        picture.heightPx(),
                        LensPrior.ofFocal(focalPx, USUAL_FOCAL_SIGMA).forCroppedPicture(),
                        STRETCH_SIGMA)
                .view();
    }

    private Function<Cell, Optional<Expected>> expectedBy(CameraView view, CrossingLattice lattice) {
        Cell middle = lattice.middle();
        double contrast = lattice.meanContrast();
        Function<Cell, Point> seenAt = cell -> view.pixel(Plane.GROUND.pointAbove(place(cell, middle)));
        return cell -> Optional.of(seenAt.apply(cell))
                .filter(this::isInside)
                .map(at -> new Expected(
                        at,
                        seenAt.apply(cell.plus(1, 0)).minus(at),
                        seenAt.apply(cell.plus(0, 1)).minus(at),
                        contrast));
    }

    private boolean isInside(Point pixel) {
        return pixel.x() >= 0
                && pixel.y() >= 0
                && pixel.x() <= picture.widthPx() - 1
                && pixel.y() <= picture.heightPx() - 1;
    }
}
