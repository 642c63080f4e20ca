package weltwright.hide;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.RenderedGround;
import weltwright.image.Photo;

/** An offcut of leather with a hole on a cutting mat, drawn by OpenCV's camera model. */
public final class LeatherScene {
    public static final double PITCH_MM = 10;
    /** About the tone curve of sRGB (IEC 61966-2-1). */
    public static final double GAMMA = 2.2;

    public static final double LEATHER = 35;
    public static final double FLOOR = 130;

    /** An offcut of a hide: smooth, with a bay, about 190 by 125 mm. */
    public static final Star OFFCUT = new Star(new Point(0, 0), 75, 18, 9);

    public static final Star HOLE = new Star(new Point(30, 12), 9, 1, 1);

    /** The curve r = radius + wave cos 2a + tilt sin 3a about a centre. */
    public record Star(Point centre, double radius, double wave, double tilt) {
        public Polyline line() {
            List<Point> points = new ArrayList<>();
            for (int i = 0; i < 1440; i++) {
                double a = Math.toRadians(i / 4.0);
                points.add(centre.plus(new Point(Math.cos(a), Math.sin(a)).times(at(a))));
            }
            return Polyline.closed(points);
        }

        private double steepest() {
            double waves = Math.abs(wave) + Math.abs(tilt);
            return 3 * waves / (radius - waves);
        }

        private double at(double a) {
            return radius + wave * Math.cos(2 * a) + tilt * Math.sin(3 * a);
        }

        /** How much of a sample lies inside: to first order in the distance from the curve. */
        public double cover(Point at, double footprint) {
            Point off = at.minus(centre);
            double beyond = Math.abs(off.norm() - radius) - Math.abs(wave) - Math.abs(tilt);
            if (beyond > footprint * Math.hypot(1, steepest())) {
                return off.norm() < radius ? 1 : 0; // most of a picture, without angles
            }
            double a = Math.atan2(off.y(), off.x());
            double slope = (3 * tilt * Math.cos(3 * a) - 2 * wave * Math.sin(2 * a)) / at(a);
            return RenderedGround.cover((off.norm() - at(a)) / Math.hypot(1, slope), 0, footprint);
        }
    }

    public static final RenderedGround CAMERA = new RenderedGround(1500, -0.03, 6, 0, 420, 0.7, 2);
    public static final Photo OFFCUT_ON_MAT = CAMERA.photo(onMat(OFFCUT, HOLE), GAMMA);

    /** The mat with its lines, and the leather on it. */
    public static RenderedGround.Paint onMat(Star leather, Star... holes) {
        return (at, footprint) -> {
            double part = leather.cover(at, footprint);
            for (Star hole : holes) {
                part -= hole.cover(at, footprint);
            }
            double dx = Math.abs(Math.IEEEremainder(at.x(), PITCH_MM));
            double dy = Math.abs(Math.IEEEremainder(at.y(), PITCH_MM));
            double line =
                    Math.max(RenderedGround.cover(dx, 0.25, footprint), RenderedGround.cover(dy, 0.25, footprint));
            return part * LEATHER + (1 - part) * (FLOOR - 70 * line);
        };
    }

    private LeatherScene() {}
}
