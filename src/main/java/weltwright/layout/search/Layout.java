package weltwright.layout.search;

import java.util.Arrays;
import weltwright.layout.collision.TurnedShape;

/** Where each of several shapes lies in a box of some length. Immutable. */
public final class Layout {
    private final double length;
    private final TurnedShape[] shapes;
    private final double[] x;
    private final double[] y;

    Layout(double length, TurnedShape[] shapes, double[] x, double[] y, int count) {
        this.length = length;
        this.shapes = Arrays.copyOf(shapes, count);
        this.x = Arrays.copyOf(x, count);
        this.y = Arrays.copyOf(y, count);
    }

    /** The length of the box. */
    public double length() {
        return length;
    }

    public int size() {
        return shapes.length;
    }

    /** The shape, at its turn. */
    public TurnedShape shape(int i) {
        return shapes[i];
    }

    /** The place of the shape's reference point. */
    public double x(int i) {
        return x[i];
    }

    /** The place of the shape's reference point. */
    public double y(int i) {
        return y[i];
    }
}
