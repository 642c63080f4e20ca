package weltwright.layout.search;

import java.util.Arrays;
import java.util.List;
import weltwright.layout.collision.OverlapMeasure;
import weltwright.layout.collision.TurnedShape;

/**
 * Where each shape lies in a box, which of them overlap and by how much, and the weights of guided local search on the
 * overlaps. Mutable; each thread works on its own.
 *
 * <p>The box reaches from (0, 0) to (length, height). Shapes always lie inside of it. The first shapes can be moved;
 * the others, such as flaws in leather, stay.
 */
final class Arrangement {
    /**
     * Factors on the weight of a pair after each pass: where it overlaps between the first two, in proportion to the
     * worst overlap, and else the last, never below 1. After Gardeyn and Wauters 2025.
     */
    private static final double LEAST_RISE = 1.2;

    private static final double MOST_RISE = 2.0;
    private static final double DECAY = 0.95;

    final List<SearchItem> items;
    final int movable;
    final int count;
    final TurnedShape[] shapes;
    final double[] x;
    final double[] y;
    final double[] minX;
    final double[] minY;
    final double[] maxX;
    final double[] maxY;
    final double[] overlaps;
    final double[] weights;
    final OverlapMeasure measure = new OverlapMeasure();
    double length;
    final double height;
    private final TurnedShape[] narrowest;
    private final boolean[] choosy;
    private final boolean[] forSome;

    /**
     * An arrangement whose shapes have no place yet.
     *
     * @param items the shapes that can be moved
     * @param fixed those that cannot, with their places
     */
    Arrangement(List<SearchItem> items, List<FixedShape> fixed, double length, double height) {
        this.items = List.copyOf(items);
        this.length = length;
        this.height = height;
        movable = items.size();
        count = movable + fixed.size();
        shapes = new TurnedShape[count];
        x = new double[count];
        y = new double[count];
        minX = new double[count];
        minY = new double[count];
        maxX = new double[count];
        maxY = new double[count];
        overlaps = new double[count * count];
        weights = new double[count * count];
        Arrays.fill(weights, 1);
        Arrays.fill(minX, Double.POSITIVE_INFINITY);
        narrowest = new TurnedShape[movable];
        choosy = new boolean[movable];
        forSome = new boolean[count];
        for (int i = 0; i < movable; i++) {
            choosy[i] = items.get(i).choosy();
            narrowest[i] = items.get(i)
                    .narrowest(height)
                    .orElseThrow(() -> new IllegalArgumentException("a shape higher than " + height));
            shapes[i] = narrowest[i];
        }
        for (int i = movable; i < count; i++) {
            FixedShape obstacle = fixed.get(i - movable);
            forSome[i] = obstacle.forSome();
            setPlace(i, obstacle.shape(), obstacle.x(), obstacle.y());
        }
    }

    /** Becomes equal to another arrangement of the same items. */
    void copyFrom(Arrangement other) {
        length = other.length;
        System.arraycopy(other.shapes, 0, shapes, 0, count);
        System.arraycopy(other.x, 0, x, 0, count);
        System.arraycopy(other.y, 0, y, 0, count);
        System.arraycopy(other.minX, 0, minX, 0, count);
        System.arraycopy(other.minY, 0, minY, 0, count);
        System.arraycopy(other.maxX, 0, maxX, 0, count);
        System.arraycopy(other.maxY, 0, maxY, 0, count);
        System.arraycopy(other.overlaps, 0, overlaps, 0, overlaps.length);
        System.arraycopy(other.weights, 0, weights, 0, weights.length);
    }

    /** Places a shape and measures its overlaps anew. */
    void place(int i, TurnedShape shape, double px, double py) {
        setPlace(i, shape, px, py);
        for (int j = 0; j < count; j++) {
            double overlap = j == i ? 0 : overlap(i, j);
            overlaps[i * count + j] = overlap;
            overlaps[j * count + i] = overlap;
        }
    }

    private void setPlace(int i, TurnedShape shape, double px, double py) {
        shapes[i] = shape;
        x[i] = px;
        y[i] = py;
        minX[i] = px + shape.minX();
        maxX[i] = px + shape.maxX();
        minY[i] = py + shape.minY();
        maxY[i] = py + shape.maxY();
    }

    /** @param i a shape that can be moved */
    private double overlap(int i, int j) {
        if ((forSome[j] && !choosy[i])
                || minX[i] >= maxX[j]
                || maxX[i] <= minX[j]
                || minY[i] >= maxY[j]
                || maxY[i] <= minY[j]) {
            return 0;
        }
        double dx = x[j] - x[i];
        double dy = y[j] - y[i];
        return measure.collide(shapes[i], shapes[j], dx, dy)
                ? OverlapMeasure.measure(shapes[i], shapes[j], dx, dy, Double.POSITIVE_INFINITY)
                : 0;
    }

    /**
     * The weighted overlap that a shape would have at a place, or infinity as soon as it reaches a bound.
     *
     * @param i the shape; its present place does not count
     */
    double overlapAt(int i, TurnedShape shape, double px, double py, double bound) {
        double left = px + shape.minX();
        double right = px + shape.maxX();
        double bottom = py + shape.minY();
        double top = py + shape.maxY();
        double sum = 0;
        int row = i * count;
        boolean all = choosy[i];
        for (int j = 0; j < count; j++) {
            if (minX[j] < right
                    && maxX[j] > left
                    && minY[j] < top
                    && maxY[j] > bottom
                    && j != i
                    && (all || !forSome[j])) {
                double dx = x[j] - px;
                double dy = y[j] - py;
                TurnedShape other = shapes[j];
                if (measure.collide(shape, other, dx, dy)) {
                    double weight = weights[row + j];
                    if (sum + weight * OverlapMeasure.least(shape, other) >= bound) {
                        return Double.POSITIVE_INFINITY;
                    }
                    sum += weight * OverlapMeasure.measure(shape, other, dx, dy, (bound - sum) / weight);
                    if (sum >= bound) {
                        return Double.POSITIVE_INFINITY;
                    }
                }
            }
        }
        return sum;
    }

    boolean overlaps(int i) {
        int row = i * count;
        for (int j = 0; j < count; j++) {
            if (overlaps[row + j] > 0) {
                return true;
            }
        }
        return false;
    }

    double totalOverlap() {
        double sum = 0;
        for (double overlap : overlaps) {
            sum += overlap;
        }
        return sum / 2;
    }

    double totalWeightedOverlap() {
        double sum = 0;
        for (int k = 0; k < overlaps.length; k++) {
            sum += weights[k] * overlaps[k];
        }
        return sum / 2;
    }

    /** Raises the weights of the pairs that overlap, and lowers the others. */
    void updateWeights() {
        double worst = 0;
        for (double overlap : overlaps) {
            worst = Math.max(worst, overlap);
        }
        for (int k = 0; k < weights.length; k++) {
            double factor = overlaps[k] > 0 ? LEAST_RISE + (MOST_RISE - LEAST_RISE) * overlaps[k] / worst : DECAY;
            weights[k] = Math.max(1, weights[k] * factor);
        }
    }

    void resetWeights() {
        Arrays.fill(weights, 1);
    }

    /**
     * Changes the length of the box. Shapes whose reference point lies right of {@code splitX} move with its right
     * side; all are kept inside, turned where they must be.
     */
    void changeLength(double newLength, double splitX) {
        double shift = newLength - length;
        length = newLength;
        for (int i = 0; i < movable; i++) {
            TurnedShape shape = fits(shapes[i]) ? shapes[i] : narrowest[i];
            setPlace(i, shape, clampX(shape, x[i] > splitX ? x[i] + shift : x[i]), clampY(shape, y[i]));
        }
        measureAll();
    }

    private void measureAll() {
        for (int i = 0; i < movable; i++) {
            for (int j = i + 1; j < count; j++) {
                double overlap = overlap(i, j);
                overlaps[i * count + j] = overlap;
                overlaps[j * count + i] = overlap;
            }
        }
    }

    /** The x nearest to the given one at which the shape lies inside the box. */
    double clampX(TurnedShape shape, double px) {
        return Math.max(-shape.minX(), Math.min(length - shape.maxX(), px));
    }

    /** The y nearest to the given one at which the shape lies inside the box. */
    double clampY(TurnedShape shape, double py) {
        return Math.max(-shape.minY(), Math.min(height - shape.maxY(), py));
    }

    boolean fits(TurnedShape shape) {
        return shape.width() <= length && shape.height() <= height;
    }

    /** The least length of a box into which each shape fits by itself. */
    double leastLength() {
        double least = 0;
        for (TurnedShape shape : narrowest) {
            least = Math.max(least, shape.width());
        }
        return least;
    }

    Layout save() {
        return new Layout(length, shapes, x, y, movable);
    }

    /** Takes the places of a layout, and its length. */
    void restore(Layout layout) {
        length = layout.length();
        for (int i = 0; i < movable; i++) {
            setPlace(i, layout.shape(i), layout.x(i), layout.y(i));
        }
        measureAll();
    }
}
