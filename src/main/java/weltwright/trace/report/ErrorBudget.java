package weltwright.trace.report;

import java.util.List;

/**
 * How far the traced outline may be from the true one: 95 of 100 of its points lie within {@code error95Mm}.
 *
 * @param parts what it is made of, largest first; they add by squares
 */
public record ErrorBudget(double error95Mm, List<Part> parts) {

    /**
     * One source of error and its share.
     *
     * @param error95Mm what the source alone would give
     */
    public record Part(ErrorSource source, double error95Mm) {}
}
