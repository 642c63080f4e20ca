package weltwright.trace.report;

import java.util.List;

/**
 * The error of a traced outline: 95 % of its points lie within {@code error95Mm} of the true one.
 *
 * @param parts shares by source, largest first; they add by squares
 */
public record ErrorBudget(double error95Mm, List<Part> parts) {

    /**
     * One source of error and its share.
     *
     * @param error95Mm error by this source alone
     */
    public record Part(ErrorSource source, double error95Mm) {}
}
