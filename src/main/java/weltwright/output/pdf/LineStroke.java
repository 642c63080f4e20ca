package weltwright.output.pdf;

import java.awt.Color;
import java.util.List;

/**
 * How a line is drawn.
 *
 * @param widthMm of the line
 * @param colour of its ink
 * @param dashesMm lengths of dash, gap, dash, gap ...; empty for an unbroken line
 */
public record LineStroke(double widthMm, Color colour, List<Double> dashesMm) {

    public static LineStroke unbroken(double widthMm, Color colour) {
        return new LineStroke(widthMm, colour, List.of());
    }

    public static LineStroke dashed(double widthMm, Color colour, Double... dashesMm) {
        return new LineStroke(widthMm, colour, List.of(dashesMm));
    }
}
