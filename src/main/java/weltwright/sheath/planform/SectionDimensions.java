package weltwright.sheath.planform;

import java.util.List;
import java.util.OptionalDouble;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * What a maker would measure on a sheath that is cut through.
 *
 * @param bladeMm thickness of the knife there
 * @param heightMm of the knife there, from edge to spine
 * @param outerMm y of the outer edge, on the edge's side
 * @param edgeToStitchMm from the knife's edge to the middle of the stitch
 * @param marginMm from the stitch to the outer edge
 * @param weltMm thickness of all layers of the welt; empty past its end
 * @param sewnMm thickness of the sewn edge
 * @param wholeMm from the outside of the face to the outside of the back, where that is most
 * @param airMm between the knife, where it is thickest, and the leather of the face
 * @param faceMm leather of the face from stitch to stitch, or to the fold
 */
public record SectionDimensions(
        double bladeMm,
        double heightMm,
        double outerMm,
        double edgeToStitchMm,
        double marginMm,
        OptionalDouble weltMm,
        double sewnMm,
        double wholeMm,
        double airMm,
        double faceMm) {

    public static SectionDimensions of(SheathSection cut, double outerMm) {
        double stitch = cut.stitches().get(0);
        double sewn = cut.face().get(0).y() - cut.back().get(0).y() + 2 * cut.leatherMm();
        double high = cut.face().stream().mapToDouble(Point::y).max().orElseThrow();
        double low = cut.back().stream().mapToDouble(Point::y).min().orElseThrow();
        Point thickest = thickest(cut);
        return new SectionDimensions(
                cut.knife().thicknessMm(),
                cut.knife().spineMm() - cut.knife().edgeMm(),
                outerMm,
                cut.knife().edgeMm() - stitch,
                stitch - outerMm,
                welt(cut),
                sewn,
                high - low + 2 * cut.leatherMm(),
                heightAt(cut.face(), thickest.x()) - thickest.y(),
                Polyline.open(cut.face()).lengthMm());
    }

    /** The place on the face's side of the knife that stands out most. */
    public static Point thickest(SheathSection cut) {
        Point most = cut.knife().boundary().get(0);
        for (Point p : cut.knife().boundary()) {
            if (p.y() > most.y() + 1e-9) {
                most = p;
            }
        }
        return new Point(most.x(), most.y() + cut.knifeLiftMm());
    }

    private static OptionalDouble welt(SheathSection cut) {
        double stitch = cut.stitches().get(0);
        List<SheathSection.Layer> layers = cut.welt().stream()
                .filter(layer -> layer.fromY() <= stitch && stitch <= layer.toY())
                .toList();
        return layers.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        layers.stream().mapToDouble(l -> l.toZ() - l.fromZ()).sum());
    }

    /** z of the inside of the leather. */
    public static double heightAt(List<Point> chain, double y) {
        for (int i = 0; i + 1 < chain.size(); i++) {
            Point a = chain.get(i);
            Point b = chain.get(i + 1);
            if (a.x() <= y && y <= b.x() && b.x() > a.x()) {
                return a.towards(b, (y - a.x()) / (b.x() - a.x())).y();
            }
        }
        return chain.get(chain.size() - 1).y();
    }
}
