package weltwright.layout.collision;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import weltwright.geometry.Point;

/** Polygons at random, mostly concave: corners at random distances from a point, in ascending direction. */
public final class RandomShapes {
    private RandomShapes() {}

    /** A polygon of 3 to 14 corners, each at 0.3 to 1 times the given size from the origin. */
    public static List<Point> star(Random random, double size) {
        int n = 3 + random.nextInt(12);
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / n;
            double r = size * (0.3 + 0.7 * random.nextDouble());
            corners.add(new Point(r * Math.cos(angle), r * Math.sin(angle)));
        }
        return corners;
    }
}
