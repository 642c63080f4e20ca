package weltwright.output.pdf;

import java.awt.Color;
import java.util.List;

/**
 * The stroke of a line.
 *
 * @param widthMm line width
 * @param colour of the line
 * @param dashesMm lengths of dashes and gaps in turn; empty for a solid line
 */
public record LineStroke(double widthMm, Color colour, List<Double> dashesMm) {

    public static LineStroke unbroken(double widthMm, Color colour) {
        return new LineStroke(widthMm, colour, List.of());
    }

    public static LineStroke dashed(double widthMm, Color colour, Double... dashesMm) {
        return new LineStroke(widthMm, colour, List.of(dashesMm));
    }
}
