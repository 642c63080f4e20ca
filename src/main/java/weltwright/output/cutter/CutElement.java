package weltwright.output.cutter;

import java.util.function.UnaryOperator;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * One line, hole or text in a drawing for a cutting machine.
 *
 * @param layer what the machine does with it
 * @param shape where, in mm, y up
 * @param label a few words on what it is for, or empty
 */
public record CutElement(CutLayer layer, Shape shape, String label) {

    /** A shape that cutting machines support. */
    public sealed interface Shape permits Chain, Circle, Text {
        /** The same where a motion of the plane puts it; text stays level. */
        Shape moved(UnaryOperator<Point> motion);
    }

    /** A chain of straight segments. */
    public record Chain(Polyline line) implements Shape {
        @Override
        public Chain moved(UnaryOperator<Point> motion) {
            return new Chain(line.map(motion));
        }
    }

    /** A circle. */
    public record Circle(Point centre, double radiusMm) implements Shape {
        @Override
        public Circle moved(UnaryOperator<Point> motion) {
            return new Circle(motion.apply(centre), radiusMm);
        }
    }

    /**
     * A level line of text.
     *
     * @param from where its base line begins
     * @param capitalMm the height of its capitals
     */
    public record Text(String text, Point from, double capitalMm) implements Shape {
        @Override
        public Text moved(UnaryOperator<Point> motion) {
            return new Text(text, motion.apply(from), capitalMm);
        }
    }

    CutElement moved(UnaryOperator<Point> motion) {
        return new CutElement(layer, shape.moved(motion), label);
    }
}
