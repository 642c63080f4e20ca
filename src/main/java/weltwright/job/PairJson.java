package weltwright.job;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import weltwright.geometry.Point;

/** Two numbers in a {@link JobDocument}: mostly a point, in mm. */
@JsonFormat(shape = JsonFormat.Shape.ARRAY)
@JsonPropertyOrder({"x", "y"})
record PairJson(double x, double y) {
    /** Greatest absolute coordinate of a knife's point; a greater one is damage to the file. Chosen by eye. */
    private static final double GREATEST_COORDINATE_MM = 2000;

    static PairJson of(Point point) {
        return new PairJson(point.x(), point.y());
    }

    Point point() {
        return new Point(x, y);
    }

    /** A point of a knife, checked to be within bounds. */
    Point place() {
        if (Math.abs(x) > GREATEST_COORDINATE_MM || Math.abs(y) > GREATEST_COORDINATE_MM) {
            throw new IllegalArgumentException("a point of the knife at " + this);
        }
        return point();
    }
}
