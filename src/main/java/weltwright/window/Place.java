package weltwright.window;

import java.util.function.BiFunction;
import java.util.function.Function;
import org.locationtech.jts.linearref.LengthIndexedLine;
import weltwright.geometry.Point;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;

/** A landmark that the user can pull along the outline. */
enum Place implements Grip {
    TIP("tip", 'T', Landmarks::tip, (l, p) -> new Landmarks(p, l.heel(), l.spineStart(), l.butt())),
    HEEL("heel", 'H', Landmarks::heel, (l, p) -> new Landmarks(l.tip(), p, l.spineStart(), l.butt())),
    SPINE("spine meets handle", 'S', Landmarks::spineStart, (l, p) -> new Landmarks(l.tip(), l.heel(), p, l.butt())),
    BUTT("butt", 'B', Landmarks::butt, (l, p) -> new Landmarks(l.tip(), l.heel(), l.spineStart(), p));

    private static final double STEP_MM = 0.1;

    private final String words;
    private final char key;
    private final Function<Landmarks, Point> get;
    private final BiFunction<Landmarks, Point, Landmarks> with;

    Place(String words, char key, Function<Landmarks, Point> get, BiFunction<Landmarks, Point, Landmarks> with) {
        this.words = words;
        this.key = key;
        this.get = get;
        this.with = with;
    }

    /** What a maker calls it. */
    String words() {
        return words;
    }

    /** The key that takes hold of it. */
    char key() {
        return key;
    }

    @Override
    public Point of(Silhouette silhouette) {
        return get.apply(silhouette.landmarks());
    }

    /** Moved to the point of the outline that lies nearest to {@code to}. */
    @Override
    public Silhouette pulled(Silhouette silhouette, Point to) {
        LengthIndexedLine line = line(silhouette);
        return at(silhouette, line, line.project(to.coordinate()));
    }

    /** Moved along the outline, counter-clockwise where {@code mm} is positive. */
    Silhouette nudged(Silhouette silhouette, double mm) {
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
