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
        List<Place> places = lines.parallelStream()
                .flatMap(line -> places(Run.of(line), lines, halfWidthMm, rim, area).stream())
                .toList();
        List<Strips.Strip> strips = new ArrayList<>();
        for (Place place : places) {
            Point aside = place.along().left().times(halfWidthMm + ALONG_MM);
            strips.add(new Strips.Strip(place.at(), place.along()));
            strips.add(new Strips.Strip(place.at().plus(aside), place.along()));
            strips.add(new Strips.Strip(place.at().minus(aside), place.along()));
        }
        float[][] seen = new Strips(picture, view, ALONG_MM).means(strips);
        List<Look> looks = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            double[] step = new double[3];
            double[] apart = new double[3];
            for (int k = 0; k < 3; k++) {
                double left = seen[3 * i + 1][k];
                double right = seen[3 * i + 2][k];
                double darker = Math.min(left, right);
                step[k] = ((left + right) / 2 - seen[3 * i][k]) / darker;
                apart[k] = (left - right) / darker;
            }
            Place on = places.get(i);
            looks.add(new Look(on.at(), on.along(), on.outside(), step, apart));
        }
        return looks;
    }

    /**
     * A straight line.
     *
     * @param along its direction, of length 1
     */
    private record Run(Point from, Point along, double lengthMm) {
        static Run of(Polyline line) {
            Point from = line.points().get(0);
            Point way = line.points().get(1).minus(from);
            return new Run(from, way.unit(), way.norm());
        }

        double distance(Point p) {
            return Math.abs(along.cross(p.minus(from)));
        }
    }

    /** Where a line is looked at, and whether that is outside of the knife for sure. */
    private record Place(Point at, Point along, boolean outside) {}

    private static List<Place> places(
            Run run, List<Polyline> lines, double halfWidthMm, IndexedFacetDistance rim, IndexedPointInAreaLocator area) {
        List<Run> across = lines.stream()
                .map(Run::of)
                .filter(other -> Math.abs(other.along().cross(run.along())) > 0.5)
                .toList();
        List<Place> places = new ArrayList<>();
        double s = 0;
        while (s < run.lengthMm()) {
            Point at = run.from().plus(run.along().times(s));
            double distance = rim.distance(JTS.createPoint(at.coordinate()));
            // Another line that crosses so near spoils a look.
            if (distance < REACH_MM && across.stream().noneMatch(o -> o.distance(at) < halfWidthMm + ALONG_MM)) {
                boolean outside = distance > OUTSIDE_MM && area.locate(at.coordinate()) == Location.EXTERIOR;
                places.add(new Place(at, run.along(), outside));
            }
            // From far off nothing nearer than the rim is within reach.
            s += STEP_MM * Math.max(1, Math.floor((distance - REACH_MM) / STEP_MM));
        }
        return places;
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
