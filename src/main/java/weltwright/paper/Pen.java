package weltwright.paper;

import java.awt.Color;
import java.util.List;

/**
 * How a line is drawn.
 *
 * @param widthMm of the line
 * @param colour of its ink
 * @param dashesMm lengths of dash, gap, dash, gap ...; empty for an unbroken line
 */
public record Pen(double widthMm, Color colour, List<Double> dashesMm) {

    static Pen unbroken(double widthMm, Color colour) {
        return new Pen(widthMm, colour, List.of());
    }

    static Pen dashed(double widthMm, Color colour, Double... dashesMm) {
        return new Pen(widthMm, colour, List.of(dashesMm));
    }
}
