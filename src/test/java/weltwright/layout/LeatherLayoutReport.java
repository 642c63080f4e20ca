package weltwright.layout;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;

/**
 * Prints how densely {@link LeatherLayout} fills the hides of {@link LeatherInstances} with their ten jobs in turn, how
 * little of the length half as many sheaths take, and how soon one sheath lies on a panel of 12 by 24 in. Each layout
 * is checked by JTS.
 *
 * <p>Arguments: seconds for each layout, and a seed (1 where missing).
 */
public final class LeatherLayoutReport {
    private LeatherLayoutReport() {}

    public static void main(String[] arguments) throws IOException {
        PrintStream out = System.out;
        double seconds = Double.parseDouble(arguments[0]);
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        List<SheathPieces> jobs = LeatherInstances.jobs();
        List<String> first = firstLayouts(jobs, seed);
        out.println("first layout of one sheath on a panel, ms of the clock (ms of the thread), job by job: "
                + String.join(", ", first));
        out.printf(
                "%-10s %8s | %8s %8s | %8s %10s %8s%n",
                "hide", "dm²", "sheaths", "density", "sheaths", "length mm", "density");
        for (Stock hide : LeatherInstances.hides()) {
            LeatherLayout search = new LeatherLayout(hide, Spacing.USUAL, seed);
            StockLayout most = search.most(jobs, Budget.seconds(seconds), better -> {});
            LayoutCheck.assertSound(most, Spacing.USUAL);
            int half = Math.max(1, most.sheaths().size() / 2);
            StockLayout shortest =
                    search.shortest(most.sheaths().subList(0, half), Budget.seconds(seconds), better -> {});
            LayoutCheck.assertSound(shortest, Spacing.USUAL);
            out.printf(
                    Locale.ROOT,
                    "%-10s %8.1f | %8d %7.1f%% | %8d %10.1f %7.1f%%%n",
                    hide.name(),
                    hide.usable().getArea() / 1e4,
                    most.sheaths().size(),
                    100 * most.piecesAreaMm2() / hide.usable().getArea(),
                    half,
                    shortest.usedLengthMm(),
                    100 * shortest.piecesAreaMm2() / shortest.usedAreaMm2());
        }
    }

    /** Times until each job's first layout is told; the first one includes the start of the virtual machine. */
    private static List<String> firstLayouts(List<SheathPieces> jobs, long seed) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        Stock panel = Stock.panel("panel", 609.6, 304.8, OptionalDouble.empty());
        List<String> times = new ArrayList<>();
        for (SheathPieces job : jobs) {
            List<String> told = new ArrayList<>();
            long start = System.nanoTime();
            long used = threads.getCurrentThreadCpuTime();
            StockLayout layout = new LeatherLayout(panel, Spacing.USUAL, seed)
                    .shortest(
                            List.of(job),
                            Budget.seconds(2),
                            better -> told.add((System.nanoTime() - start) / 1_000_000 + " ("
                                    + (threads.getCurrentThreadCpuTime() - used) / 1_000_000 + ")"));
            LayoutCheck.assertSound(layout, Spacing.USUAL);
            times.add(told.get(0));
        }
        return times;
    }
}
