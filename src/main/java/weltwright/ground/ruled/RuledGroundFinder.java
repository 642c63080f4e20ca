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

/**
 * Finds a ruled ground in a picture, such as a cutting mat or squared paper, and its crossings to a fraction of a
 * pixel.
 *
 * <p>Made for two families of parallel lines square to each other, each evenly spaced, lighter or darker than the
 * ground between them, some of them bolder; for a knife that hides part of it, numbers, scars, the ground's edge, and a
 * table around it. The steps:
 *
 * <ol>
 *   <li>in a few patches of a reduced picture, guess at lattices ({@link LatticeSeed});
 *   <li>from the first guess that holds, grow outwards on the full picture ({@link LatticeGrowth});
 *   <li>fit a view to the crossings; look where it says that there are more, beyond the reach of unbroken lines;
 *   <li>drop those that the view contradicts.
 * </ol>
 *
 * The pitch must be told: nothing in a picture tells a small ground seen from near from a large one seen from afar.
 * Each line that shows is taken to be one pitch from the next, bold or not. It stops at crossings in pixels;
 * {@link ViewSolver} makes a camera and a pose of them.
 */
public final class RuledGroundFinder {
    /**
     * How far a ruling's proportions are off: standard deviation of the ratio of its pitches, over 1. Common practice.
     */
    public static final double STRETCH_SIGMA = 0.0005;

    /**
     * Lines half a millimetre wide on a ground as large as a table are two pixels wide in such a picture; a finer one
     * tells no more of where they are, as its pixels are as much noisier.
     */
    private static final int FINE_LONG_SIDE_PX = 1900;

    /** Fewer than this are a pattern on something else, or a ground hidden nearly wholly. */
    private static final int FEWEST_CROSSINGS = 30;

    private static final int FEWEST_LINES = 4;

    /** With this many the rest of the guesses need not be tried. */
    private static final int PLENTY = 120;

    /** Enough to check a fit with; all of them are left to the solver of the view. */
    private static final int SAMPLE = 150;

    /**
     * The check must not hang on what is known of the lens, nor on where its axis lies, since the picture may be
     * cropped: any phone's will do. Common practice.
     */
    private static final double USUAL_FOCAL_PER_DIAGONAL = 27 / Math.hypot(36, 24);

    private static final double USUAL_FOCAL_SIGMA = 0.3;

    /**
     * How far from the view's fit a crossing may be, as a part of the pitch, if it is one: mats are a little uneven.
     */
    private static final double GREATEST_MISFIT = 0.08;

    /** With fewer that fit, lines were miscounted or the ground is bent. */
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
     * A ruled ground. Its frame has x along the lines that are nearer to level, rightwards, y upwards in the picture, z
     * to the camera, and its origin on a crossing near the middle of what shows.
     *
     * @param crossings those seen whole, and where the picture shows them; hundreds as a rule
     * @param extent what of the ground was seen: the smallest convex region round all crossings, in the ground frame
     * @param linesLighter whether lines are lighter than the ground between them
     * @param lineWidthPx usual width of the thinner lines
     */
    public record Found(List<ControlPoint> crossings, Region extent, boolean linesLighter, double lineWidthPx) {
        /** From a line's middle so much of a pitch is looked over: beyond the line, not as far as the next. */
        private static final double LOOK = 0.3;

        private static final double HALF_EDGE = 0.25;

        /** Mats and printed squares are true to about this. Common practice. */
        private static final double SCALE_SIGMA = 0.0007;

        /** The same in a picture with four pixels for one. */
        private Found doubled() {
            List<ControlPoint> doubled = crossings.stream()
                    .map(crossing -> new ControlPoint(
                            crossing.onGround(), crossing.pixel().times(2).plus(new Point(0.5, 0.5))))
                    .toList();
            return new Found(doubled, extent, linesLighter, 2 * lineWidthPx);
        }

        /**
         * Gives the crossings found their places on the ground.
         *
         * @param pitchMm from line to line; the same along x and y
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
                            pair.middle(), pair.along().left().times(LOOK * pitchMm), HALF_EDGE * pitchMm, true))
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

        /** The part of a line that lies on what was seen of the ground. */
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
     * @param pitchXMm from one upright line to the next
     * @param pitchYMm from one level line to the next
     * @throws UserFacingException where no such ground is to be seen, or too little of it
     */
    public static Found find(DecodedPhoto picture, double pitchXMm, double pitchYMm) {
        return search(picture, pitchXMm, pitchYMm)
                .orElseThrow(RuledGroundFinder::nothing)
                .orElseThrow(() -> new UserFacingException(
                        "The lines that are to be seen in the picture are not spaced evenly.",
                        "Lay the mat or the paper flat, or use the printed reference sheet."));
    }

    /**
     * The same, or nothing where there is no such ground; with the unit of length for its pitch, where that is unknown.
     */
    public static Optional<Found> lookFor(DecodedPhoto picture, double pitchMm) {
        return search(picture, pitchMm, pitchMm).flatMap(found -> found);
    }

    /**
     * What is found in the picture halved, where that is fine enough; lines lie too close for it if the whole picture
     * shows more.
     *
     * @return nothing where there is no lattice, or too small a one; and nothing in it where it is not evenly spaced
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
        // Lines as light as the ground, red on green, show in one colour only.
        for (int channel = 0; grown.isEmpty() && channel < 3; channel++) {
            Mat colour = new Mat();
            Core.extractChannel(picture.bgr(), colour, channel);
            grown = grown(colour, new InterpolatedChannel(colour));
            colour.release();
        }
        return grown;
    }

    /** The first lattice that is large, or else the largest, if it is large enough to be one. */
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

    private static UserFacingException nothing() {
        return new UserFacingException(
                "No ruled ground is to be seen in the picture.",
                "Photograph the knife on a cutting mat or squared paper with plenty of its lines in view, sharp and"
                        + " evenly lit, or choose another kind of ground.");
    }

    /** Nothing where its lines are not spaced evenly. */
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
