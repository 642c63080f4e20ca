package weltwright.trace.visibility;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import weltwright.camera.CameraView;
import weltwright.camera.rectification.LineStripSampler;
import weltwright.geometry.Point;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.RulingPattern;

/**
 * Where the lines of a ruled ground are to be seen, and where something hides them: by how far the colour on a line is
 * from that of the ground beside it, along the difference that is usual on this ground.
 */
public final class RulingVisibility {
    private static final double STEP_MM = 0.6;

    /** Looked at together to both sides along a line, as a part of the pitch. */
    private static final double ALONG_PART = 0.15;

    private static final double MOST_ALONG_MM = 1.2;

    private final RulingPattern ruling;
    private final DecodedPhoto picture;
    private final CameraView view;
    private final double alongMm;

    public RulingVisibility(RulingPattern ruling, DecodedPhoto picture, CameraView view) {
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

    public PrintVisibility look() {
        List<Look> looks = looks();
        double[] usual = usual(looks);
        LineVisibilityMeasure<Look> measure = LineVisibilityMeasure.of(looks, look -> look.along(usual));
        List<PrintVisibility.Sight> sights = new ArrayList<>();
        List<Point> unclear = new ArrayList<>();
        double[] lineColour = new double[3];
        if (measure.tells()) {
            for (Look look : looks) {
                if (look.even() && measure.isUsualOrBolder(look)) {
                    sights.add(new PrintVisibility.Sight(look.at(), true));
                    for (int k = 0; k < 3; k++) {
                        lineColour[k] += look.step()[k] * look.ground()[k];
                    }
                } else if (look.even() && measure.isNone(look)) {
                    sights.add(new PrintVisibility.Sight(look.at(), false));
                } else {
                    unclear.add(look.at());
                }
            }
        }
        return new PrintVisibility(sights, unclear, lineColour);
    }

    /** The direction of the usual step: the median of each channel, of length 1. */
    private static double[] usual(List<Look> looks) {
        double[] usual = new double[3];
        for (int k = 0; k < 3; k++) {
            int channel = k;
            usual[k] = OrderStatistic.median(
                    looks.stream().mapToDouble(look -> look.step()[channel]).toArray());
        }
        double length = Math.sqrt(Arrays.stream(usual).map(u -> u * u).sum());
        return Arrays.stream(usual).map(u -> u / length).toArray();
    }

    private List<Look> looks() {
        Envelope box = ruling.extent().area().getEnvelopeInternal();
        IndexedPointInAreaLocator inside =
                new IndexedPointInAreaLocator(ruling.extent().area());
        double pitch = ruling.pitchMm();
        List<LineStripSampler.Lane> lanes = new ArrayList<>();
        for (double x = Math.ceil(box.getMinX() / pitch) * pitch; x <= box.getMaxX(); x += pitch) {
            addLanes(new Point(x, box.getMinY()), new Point(0, 1), box.getHeight(), lanes);
        }
        for (double y = Math.ceil(box.getMinY() / pitch) * pitch; y <= box.getMaxY(); y += pitch) {
            addLanes(new Point(box.getMinX(), y), new Point(1, 0), box.getWidth(), lanes);
        }
        float[][] seen = new LineStripSampler(picture, view, alongMm).lanes(lanes);
        // Its index is made when it is first asked, which is not to be done twice at the same time.
        inside.locate(ruling.extent().area().getCoordinate());
        return IntStream.range(0, seen.length / 3)
                .parallel()
                .mapToObj(line -> looks(lanes.get(3 * line), inside, seen, 3 * line))
                .flatMap(List::stream)
                .toList();
    }

    /** Those of one line. */
    private List<Look> looks(LineStripSampler.Lane on, IndexedPointInAreaLocator inside, float[][] seen, int i) {
        List<Look> looks = new ArrayList<>();
        for (int k = 0; k < on.count(); k++) {
            Point at = on.middle(k);
            if (isBetweenCrossings(at) && inside.locate(at.coordinate()) == Location.INTERIOR) {
                looks.add(look(at, seen[i], seen[i + 1], seen[i + 2], 3 * k));
            }
        }
        return looks;
    }

    /** Three for each line: on it, to its left, to its right. */
    private void addLanes(Point from, Point along, double lengthMm, List<LineStripSampler.Lane> lanes) {
        Point aside = along.left().times(ruling.zoneMm() + 0.2);
        int count = 1 + (int) (lengthMm / STEP_MM);
        LineStripSampler.Lane on = new LineStripSampler.Lane(from, along, STEP_MM, count);
        lanes.addAll(List.of(on, on.moved(aside), on.moved(aside.times(-1))));
    }

    /** Crossings spoil a look. */
    private boolean isBetweenCrossings(Point onLine) {
        double least = alongMm + ruling.zoneMm();
        return Math.max(fromLine(onLine.x()), fromLine(onLine.y())) >= least;
    }

    private double fromLine(double mm) {
        return Math.abs(mm - ruling.pitchMm() * Math.round(mm / ruling.pitchMm()));
    }

    /** @param i where the three colours lie in the arrays */
    private static Look look(Point at, float[] middle, float[] left, float[] right, int i) {
        double[] step = new double[3];
        float[] ground = new float[3];
        boolean even = true;
        for (int k = 0; k < 3; k++) {
            ground[k] = (left[i + k] + right[i + k]) / 2;
            step[k] = (ground[k] - middle[i + k]) / ground[k];
            even &= Math.abs(left[i + k] - right[i + k]) < 0.12 * (left[i + k] + right[i + k]);
        }
        return new Look(at, step, even, ground);
    }
}
