package weltwright.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.layout.LeatherLayout;
import weltwright.layout.StockLayout;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.CutterDxf;
import weltwright.output.cutter.CutterSvg;
import weltwright.output.cutter.LeatherSide;
import weltwright.output.layout.LayoutPdf;
import weltwright.units.Length;

@Command(name = "layout", mixinStandardHelpOptions = true, abbreviateSynopsis = true, sortOptions = false)
final class LayoutCommand implements Runnable {
    /** More sheaths than any stock holds would only take memory. */
    private static final int MOST_SHEATHS = 200;

    private static final double LONGEST_SECONDS = 24 * 3600;

    private final TerminalProgress terminal;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "JOB", arity = "1..*", descriptionKey = "jobs")
    private List<Path> jobs;

    @Mixin
    private StockOptions stock;

    @ArgGroup(multiplicity = "1")
    private Wanted wanted;

    private static final class Wanted {
        @Option(names = "--most")
        private boolean most;

        @Option(names = "--count", paramLabel = "N")
        private @Nullable Integer count;
    }

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            required = true)
    private Path folder;

    @Option(names = "--seconds", paramLabel = "S", defaultValue = "10")
    private double seconds;

    @Option(names = "--passes", paramLabel = "N")
    private @Nullable Long passes;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1")
    private long seed;

    @Option(names = "--side-up", paramLabel = "SIDE", defaultValue = "grain")
    private LeatherSide sideUp;

    @Option(names = "--paper", paramLabel = "PAPER", defaultValue = "a4")
    private PaperSize paper;

    LayoutCommand(TerminalProgress terminal) {
        this.terminal = terminal;
    }

    @Override
    public void run() {
        check();
        Stock panel = stock.stock();
        Path pdf = folder.resolve("layout.pdf");
        Path svg = folder.resolve("layout.svg");
        Path dxf = folder.resolve("layout.dxf");
        checkWritable(pdf, svg, dxf);
        List<Job> read = jobs.stream().map(JobFile::read).toList();
        List<SheathPieces> kinds = new ArrayList<>();
        for (int i = 0; i < read.size(); i++) {
            String name = String.valueOf(jobs.get(i).getFileName()).replaceFirst("\\.[^.]*$", "");
            kinds.add(SheathPieces.of(name, read.get(i).pattern(), stock.stretchRule()));
        }
        LeatherLayout search = new LeatherLayout(panel, stock.spacing(), seed);
        Budget budget = passes == null ? Budget.seconds(seconds) : Budget.passes(passes);
        StockLayout layout;
        try (terminal) {
            terminal.at("Laying out", 0);
            layout = wanted.count != null
                    ? search.shortest(inTurn(kinds, wanted.count), budget, better -> report(better, budget))
                    : search.most(kinds, budget, better -> report(better, budget));
        }
        if (layout.sheaths().isEmpty()) {
            throw new UserFacingException(
                    "Not one whole sheath was found room for on " + panel.name() + ".",
                    "Take larger stock, smaller gaps, or let the search take longer.");
        }
        LocalDate day = read.get(0).begun();
        PageHeading heading = new PageHeading("", "", day, "");
        CutPlan plan = CutPlan.of(layout, sideUp, heading);
        LayoutPdf.write(layout, day, paper, pdf);
        CutterSvg.write(plan, svg);
        CutterDxf.write(plan, dxf);
        print(layout, List.of(pdf, svg, dxf));
    }

    private void check() {
        if (!(seconds > 0 && seconds <= LONGEST_SECONDS) || (passes != null && passes < 1)) {
            throw new UserFacingException(
                    "A search cannot last " + (passes == null ? seconds + " seconds" : passes + " passes") + ".",
                    "Give a number of seconds of at most a day, or at least one pass.");
        }
        int count = wanted.count == null ? 1 : wanted.count;
        if (count < 1 || count > MOST_SHEATHS) {
            throw new UserFacingException(
                    count + " sheaths cannot be laid out.", "Give a number from 1 to " + MOST_SHEATHS + ".");
        }
    }

    private void checkWritable(Path pdf, Path svg, Path dxf) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UserFacingException(
                    "The folder " + folder + " cannot be written.",
                    "Choose another, or have the right to write there given to you.",
                    e);
        }
        AtomicFile.of(pdf, LayoutPdf.KIND).check();
        AtomicFile.of(svg, CutterSvg.KIND).check();
        AtomicFile.of(dxf, CutterDxf.KIND).check();
    }

    private static List<SheathPieces> inTurn(List<SheathPieces> kinds, int count) {
        List<SheathPieces> sheaths = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            sheaths.add(kinds.get(k % kinds.size()));
        }
        return sheaths;
    }

    private void report(StockLayout better, Budget budget) {
        terminal.at(
                better.sheaths().size() + " sheaths on " + new Length(better.usedLengthMm()).inMillimetres(),
                budget.used());
    }

    private void print(StockLayout layout, List<Path> files) {
        PrintWriter out = spec.commandLine().getOut();
        Length used = new Length(layout.usedLengthMm());
        out.println("Sheaths: " + layout.sheaths().size());
        layout.sheaths().stream()
                .map(SheathPieces::name)
                .distinct()
                .forEach(name -> out.println("  " + name + ": " + layout.count(name)));
        out.println("Used of the length: " + used.inMillimetres() + " (" + used.inInches() + ")");
        out.println(String.format(
                Locale.ROOT,
                "Leather covered by pieces: %.1f %% of the stock",
                100 * layout.piecesAreaMm2() / layout.stock().usable().getArea()));
        files.forEach(file -> out.println("Written: " + file));
    }
}
