package weltwright.trace;

import java.util.List;

/**
 * How far the traced outline may be from the true one: 95 of 100 of its points lie within {@code error95Mm}.
 *
 * @param parts what it is made of, largest first; they add by squares
 */
public record ErrorBudget(double error95Mm, List<Part> parts) {

    /**
     * @param cause in a maker's words: "thickness of the handle"
     * @param error95Mm what it alone would give
     * @param remedy what to do to make it smaller, one sentence
     */
    public record Part(String cause, double error95Mm, String remedy) {}
}
