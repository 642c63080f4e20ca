package weltwright.knife;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.locationtech.jts.linearref.LengthIndexedLine;
import weltwright.geometry.Point;
import weltwright.message.Messages;

/** A landmark that the user can move along the outline. */
public enum MovableLandmark implements MovablePoint {
    TIP(Messages.of(MovableLandmark.class).text("movable-landmark.tip"), Landmarks::tip, Landmarks::withTip),
    HEEL(Messages.of(MovableLandmark.class).text("movable-landmark.heel"), Landmarks::heel, Landmarks::withHeel),
    SPINE(
            Messages.of(MovableLandmark.class).text("movable-landmark.spine-meets-handle"),
            Landmarks::spineStart,
            Landmarks::withSpineStart),
    BUTT(Messages.of(MovableLandmark.class).text("movable-landmark.butt"), Landmarks::butt, Landmarks::withButt),
    GUARD_FRONT(
            Messages.of(MovableLandmark.class).text("movable-landmark.guard-s-front"),
            l -> l.guard().orElseThrow().front(),
            (l, p) -> l.withGuard(l.guard().map(g -> new Guard(p, g.back())))),
    GUARD_BACK(
            Messages.of(MovableLandmark.class).text("movable-landmark.guard-s-back"),
            l -> l.guard().orElseThrow().back(),
            (l, p) -> l.withGuard(l.guard().map(g -> new Guard(g.front(), p))));

    /** Sampling step of the outline. Chosen by eye. */
    private static final double STEP_MM = 0.1;

    private final String words;
    private final Function<Landmarks, Point> get;
    private final BiFunction<Landmarks, Point, Landmarks> with;

    MovableLandmark(String words, Function<Landmarks, Point> get, BiFunction<Landmarks, Point, Landmarks> with) {
        this.words = words;
        this.get = get;
        this.with = with;
    }

    /** Lists the landmarks of a knife: all, without the guard's where it has no guard. */
    public static List<MovableLandmark> on(Silhouette silhouette) {
        return Stream.of(values()).filter(place -> place.isOn(silhouette)).toList();
    }

    /** Returns whether the knife has this landmark. */
    public boolean isOn(Silhouette silhouette) {
        return (this != GUARD_FRONT && this != GUARD_BACK)
                || silhouette.landmarks().guard().isPresent();
    }

    /** What a maker calls it. */
    public String words() {
        return words;
    }

    @Override
    public Point of(Silhouette silhouette) {
        return get.apply(silhouette.landmarks());
    }

    /** Moves the landmark to the point of the outline nearest to {@code to}. */
    @Override
    public Silhouette pulled(Silhouette silhouette, Point to) {
        LengthIndexedLine line = line(silhouette);
        return at(silhouette, line, line.project(to.coordinate()));
    }

    /** Moves the landmark along the outline by {@code mm}, counter-clockwise where positive. */
    public Silhouette nudged(Silhouette silhouette, double mm) {
        LengthIndexedLine line = line(silhouette);
        double length = line.getEndIndex();
        double to = line.project(of(silhouette).coordinate()) + mm;
        return at(silhouette, line, to - length * Math.floor(to / length));
    }

    private Silhouette at(Silhouette silhouette, LengthIndexedLine line, double index) {
        Point point = Point.of(line.extractPoint(index));
        return new Silhouette(
                silhouette.outline(), with.apply(silhouette.landmarks(), point), silhouette.spineOnLeft());
    }

    private static LengthIndexedLine line(Silhouette silhouette) {
        return new LengthIndexedLine(silhouette.outline().sampled(STEP_MM).lineString());
    }
}
