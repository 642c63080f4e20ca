package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import weltwright.geometry.Point;
import weltwright.ground.Picture;
import weltwright.ground.View;

/**
 * Where the lines of a ruled ground are to be seen, and where something hides them: by how far the colour on a line is
 * from that of the ground beside it, along the difference that is usual on this ground.
 */
final class RuledSights {
    private static final double STEP_MM = 0.6;

    /** Looked at together to both sides along a line, as a part of the pitch. */
    private static final double ALONG_PART = 0.15;

    private static final double MOST_ALONG_MM = 1.2;

    private final RuledPattern ruling;
    private final Picture picture;
    private final View view;
    private final double alongMm;

    RuledSights(RuledPattern ruling, Picture picture, View view) {
        this.ruling = ruling;
        this.picture = picture;
        this.view = view;
        this.alongMm = Math.min(MOST_ALONG_MM, ALONG_PART * ruling.pitchMm());
    }

    /** @param step the colour of the ground less that of the line, as a part of the ground's: blue, green, red */
    private record Look(Point at, double[] step, boolean even, float[] ground) {
        double along(double[] usual) {
            return step[0] * usual[0] + step[1] * usual[1] + step[2] * usual[2];
        }
    }

    PrintLook look() {
        List<Look> looks = looks();
        double[] usual = usual(looks);
        LineMeasure<Look> measure = LineMeasure.of(looks, look -> look.along(usual));
        List<PrintLook.Sight> sights = new ArrayList<>();
        List<Point> unclear = new ArrayList<>();
        double[] lineColour = new double[3];
        if (measure.tells()) {
            for (Look look : looks) {
                if (look.even() && measure.isUsualOrBolder(look)) {
                    sights.add(new PrintLook.Sight(look.at(), true));
                    for (int k = 0; k < 3; k++) {
                        lineColour[k] += look.step()[k] * look.ground()[k];
                    }
                } else if (look.even() && measure.isNone(look)) {
                    sights.add(new PrintLook.Sight(look.at(), false));
                } else {
                    unclear.add(look.at());
                }
            }
        }
        return new PrintLook(sights, unclear, lineColour);
    }

    /** The direction of the usual step: the median of each channel, of length 1. */
    private static double[] usual(List<Look> looks) {
        double[] usual = new double[3];
        for (int k = 0; k < 3; k++) {
            int channel = k;
            double[] sorted =
                    looks.stream().mapToDouble(look -> look.step()[channel]).sorted().toArray();
            usual[k] = sorted[sorted.length / 2];
        }
        double length = Math.sqrt(Arrays.stream(usual).map(u -> u * u).sum());
        return Arrays.stream(usual).map(u -> u / length).toArray();
    }

    private List<Look> looks() {
        Envelope box = ruling.extent().area().getEnvelopeInternal();
        IndexedPointInAreaLocator inside =
                new IndexedPointInAreaLocator(ruling.extent().area());
        double pitch = ruling.pitchMm();
        List<Strips.Strip> strips = new ArrayList<>();
        for (double x = Math.ceil(box.getMinX() / pitch) * pitch; x <= box.getMaxX(); x += pitch) {
            for (double y = box.getMinY(); y <= box.getMaxY(); y += STEP_MM) {
                add(new Point(x, y), new Point(0, 1), y, inside, strips);
            }
        }
        for (double y = Math.ceil(box.getMinY() / pitch) * pitch; y <= box.getMaxY(); y += pitch) {
            for (double x = box.getMinX(); x <= box.getMaxX(); x += STEP_MM) {
                add(new Point(x, y), new Point(1, 0), x, inside, strips);
            }
        }
        float[][] seen = new Strips(picture, view, alongMm).means(strips);
        List<Look> looks = new ArrayList<>();
        for (int i = 0; i < seen.length; i += 3) {
            looks.add(look(strips.get(i).middle(), seen[i], seen[i + 1], seen[i + 2]));
        }
        return looks;
    }

    /** Three strips for each look: on the line, to its left, to its right. Crossings spoil a look. */
    private void add(
            Point at, Point along, double station, IndexedPointInAreaLocator inside, List<Strips.Strip> strips) {
        double pitch = ruling.pitchMm();
        double fromCrossing = Math.abs(station - pitch * Math.round(station / pitch));
        double aside = ruling.zoneMm() + 0.2;
        if (fromCrossing < alongMm + ruling.zoneMm() || inside.locate(at.coordinate()) != Location.INTERIOR) {
            return;
        }
        strips.add(new Strips.Strip(at, along));
        strips.add(new Strips.Strip(at.plus(along.left().times(aside)), along));
        strips.add(new Strips.Strip(at.minus(along.left().times(aside)), along));
    }

    private static Look look(Point at, float[] middle, float[] left, float[] right) {
        double[] step = new double[3];
        float[] ground = new float[3];
        boolean even = true;
        for (int k = 0; k < 3; k++) {
            ground[k] = (left[k] + right[k]) / 2;
            step[k] = (ground[k] - middle[k]) / ground[k];
            even &= Math.abs(left[k] - right[k]) < 0.12 * (left[k] + right[k]);
        }
        return new Look(at, step, even, ground);
    }
}
