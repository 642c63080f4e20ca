package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.Picture;
import weltwright.ground.View;

/**
 * Where along a knife's rough contour the ground's lines are to be seen and where they are hidden, so finely that their
 * ends are points of the knife's outline. Lines end there whatever light falls: on steel as grey as paper, where nothing
 * else shows an edge, and in shadows, which let them through.
 *
 * <p>Assumes that the ground beside a line is even, or as good as even, within a millimetre.
 */
final class LineEnds {
    private static final double STEP_MM = 0.15;

    /** Half of what is looked at together along a line: an end is told to a part of that. */
    private static final double ALONG_MM = 0.25;

    /** The contour is off by less. */
    private static final double REACH_MM = 3.2;

    /** What is so far outside of the contour shows lines as they are. */
    private static final double OUTSIDE_MM = 2;

    /** Sides that differ by more than this part of a line's contrast hide whether there is one. */
    private static final double UNEVEN = 0.6;

    /** Lines that stand out from noise by less than this many standard deviations tell nothing. */
    private static final double LEAST_CLEAR = 2;

    private static final GeometryFactory JTS = new GeometryFactory();

    private final GroundRaster raster;
    private final float[] shown;

    private LineEnds(GroundRaster raster) {
        this.raster = raster;
        this.shown = new float[raster.columns() * raster.rows()];
    }

    /** Of a ground without lines. */
    static LineEnds none() {
        return new LineEnds(new GroundRaster(new Point(0, 0), 1, 0, 0));
    }

    /**
     * @param step the ground's colour less the line's, as a part of the ground's on its darker side; a shadow leaves it as it was
     * @param aside how much the ground's two sides differ, likewise
     */
    private record Look(Point at, Point along, boolean outside, double[] step, double[] aside) {}

    /**
     * @param contour of the knife on the ground's plane, in mm, off by no more than a few millimetres
     * @param lines that are printed on the ground; each a straight one
     * @param halfWidthMm of a line with its blur
     * @param raster on which to keep what is found
     */
    static LineEnds near(
            Polyline contour, List<Polyline> lines, double halfWidthMm, GroundRaster raster, Picture picture, View view) {
        LineEnds ends = new LineEnds(raster);
        List<Look> looks = looks(contour, lines, halfWidthMm, picture, view);
        double[] usual = new double[3];
        for (int k = 0; k < 3; k++) {
            int channel = k;
            usual[k] = median(looks.stream().filter(Look::outside).mapToDouble(look -> look.step()[channel]));
        }
        double square = dot(usual, usual);
        if (square == 0) {
            return ends;
        }
        double noise = median(looks.stream()
                .filter(Look::outside)
                .mapToDouble(look -> Math.abs(dot(look.step(), usual) / square - 1)));
        if (noise * LEAST_CLEAR > 1) {
            return ends;
        }
        for (Look look : looks) {
            double aside = Math.abs(dot(look.aside(), usual)) / square;
            if (aside < UNEVEN) {
                double seen = dot(look.step(), usual) / square;
                ends.paint(look, halfWidthMm, (float) Math.max(-1, Math.min(1, 2 * seen - 1)));
            }
        }
        return ends;
    }

    /** From 1, where a line is seen, to −1, where it is hidden; 0 where there is none, or where it is not to be told. */
    double shownAt(Point place) {
        Point px = raster.pixel(place);
        return raster.covers(px)
                ? shown[(int) Math.round(px.y()) * raster.columns() + (int) Math.round(px.x())]
                : 0;
    }

    private void paint(Look look, double halfWidthMm, float value) {
        Point aside = look.along().left();
        for (double off = -halfWidthMm; off <= halfWidthMm; off += raster.mmPerPx() / 2) {
            Point px = raster.pixel(look.at().plus(aside.times(off)));
            if (raster.covers(px)) {
                shown[(int) Math.round(px.y()) * raster.columns() + (int) Math.round(px.x())] = value;
            }
        }
    }

    private static List<Look> looks(
            Polyline contour, List<Polyline> lines, double halfWidthMm, Picture picture, View view) {
        IndexedFacetDistance rim = new IndexedFacetDistance(contour.lineString());
        IndexedPointInAreaLocator area = new IndexedPointInAreaLocator(contour.polygon());
        List<Strips.Strip> strips = new ArrayList<>();
        List<Boolean> outside = new ArrayList<>();
        for (Polyline line : lines) {
            Point from = line.points().get(0);
            Point to = line.points().get(1);
            Point along = to.minus(from).unit();
            Point aside = along.left().times(halfWidthMm + ALONG_MM);
            double s = 0;
            while (s < from.distance(to)) {
                Point at = from.plus(along.times(s));
                double distance = rim.distance(JTS.createPoint(at.coordinate()));
                if (distance < REACH_MM && !isAtCrossing(at, line, lines, halfWidthMm)) {
                    strips.add(new Strips.Strip(at, along));
                    strips.add(new Strips.Strip(at.plus(aside), along));
                    strips.add(new Strips.Strip(at.minus(aside), along));
                    outside.add(distance > OUTSIDE_MM && area.locate(at.coordinate()) == Location.EXTERIOR);
                }
                // From far off nothing nearer than the rim is within reach.
                s += STEP_MM * Math.max(1, Math.floor((distance - REACH_MM) / STEP_MM));
            }
        }
        float[][] seen = new Strips(picture, view, ALONG_MM).means(strips);
        List<Look> looks = new ArrayList<>();
        for (int i = 0; i < outside.size(); i++) {
            double[] step = new double[3];
            double[] apart = new double[3];
            for (int k = 0; k < 3; k++) {
                double left = seen[3 * i + 1][k];
                double right = seen[3 * i + 2][k];
                double darker = Math.min(left, right);
                step[k] = ((left + right) / 2 - seen[3 * i][k]) / darker;
                apart[k] = (left - right) / darker;
            }
            Strips.Strip on = strips.get(3 * i);
            looks.add(new Look(on.middle(), on.along(), outside.get(i), step, apart));
        }
        return looks;
    }

    /** Whether another line crosses so near that it spoils a look. */
    private static boolean isAtCrossing(Point at, Polyline line, List<Polyline> lines, double halfWidthMm) {
        for (Polyline other : lines) {
            Point from = other.points().get(0);
            Point along = other.points().get(1).minus(from).unit();
            if (other != line && Math.abs(along.cross(at.minus(from))) < halfWidthMm + ALONG_MM) {
                return true;
            }
        }
        return false;
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double median(DoubleStream of) {
        double[] sorted = of.toArray();
        Arrays.sort(sorted);
        return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    }
}
