package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.PriceFile;
import weltwright.job.StockShelf;
import weltwright.layout.LeatherLayout;
import weltwright.layout.OffcutShape;
import weltwright.layout.SeveralStocks;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrices;
import weltwright.layout.cost.PriceList;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.LeatherSide;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.Length;

@Command(name = "layout", mixinStandardHelpOptions = true, abbreviateSynopsis = true, sortOptions = false)
final class LayoutCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(LayoutCommand.class);

    /** More sheaths than any stock holds would only take memory. */
    private static final int MOST_SHEATHS = 200;

    private static final double LONGEST_SECONDS = 24 * 3600;

    private final TerminalProgress terminal;
    private final StockShelf shelf;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "JOB", arity = "1..*", descriptionKey = "jobs")
    private List<Path> jobs;

    @Mixin
    private StockOptions stock;

    @ArgGroup(multiplicity = "1")
    private Wanted wanted = new Wanted();

    private static final class Wanted {
        @Option(names = "--most")
        private boolean most;

        @Option(names = "--count", paramLabel = "N")
        private @Nullable Integer count;

        int number() {
            return count == null ? 1 : count;
        }
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

    @Option(names = "--true-size")
    private boolean trueSize;

    @Option(names = "--offcut", paramLabel = "SHAPE", defaultValue = "straight")
    private OffcutShape offcut;

    @Option(names = "--quote")
    private boolean quote;

    @Option(names = "--prices", paramLabel = "FILE")
    private @Nullable Path prices;

    LayoutCommand(TerminalProgress terminal, StockShelf shelf) {
        this.terminal = terminal;
        this.shelf = shelf;
    }

    @Override
    public void run() {
        check();
        boolean cuts = stock.cuts();
        List<Stock> stocks = stock.stocks(shelf);
        List<LayoutFiles> files = LayoutFiles.in(folder, stocks.size(), trueSize);
        Optional<PriceList> priceList = quote ? Optional.of(SheathQuote.prices(priceFile())) : ifReadable();
        LeatherPrices leather = new LeatherPrices(stock.ownPrices(shelf), priceList.map(PriceList::leather));
        Map<Path, Made> made = new LinkedHashMap<>();
        JobNames.of(jobs).forEach((file, name) -> made.put(file, made(file, name)));
        List<SheathPieces> kinds = jobs.stream()
                .map(JobNames::absolute)
                .map(file -> Objects.requireNonNull(made.get(file)).pieces())
                .toList();
        Budget budget = passes == null ? Budget.seconds(seconds) : Budget.passes(passes);
        List<StockLayout> layouts;
        try (terminal) {
            terminal.at(TEXTS.text("layout-command.laying-out"), 0);
            layouts = stocks.size() == 1
                    ? List.of(onOne(stocks.get(0), kinds, budget))
                    : onSeveral(stocks, kinds, leather, budget);
        }
        if (layouts.stream().allMatch(layout -> layout.sheaths().isEmpty())) {
            throw new UserFacingException(
                    TEXTS.text(
                            "layout-command.not-one-whole-sheath-was",
                            stocks.stream().map(Stock::name).distinct().collect(Collectors.joining(", "))),
                    TEXTS.text("layout-command.take-larger-stock-smaller-gaps"));
        }
        LocalDate day = made.values().iterator().next().job().begun();
        PageHeading heading = new PageHeading("", "", day, "");
        made.values().forEach(this::printAssumed);
        for (int i = 0; i < layouts.size(); i++) {
            StockLayout layout = layouts.get(i);
            files.get(i).write(layout, CutPlan.of(layout, sideUp, heading), heading, paper);
            if (stocks.size() > 1) {
                spec.commandLine()
                        .getOut()
                        .println(TEXTS.text("layout-command.on", layout.stock().name()));
            }
            print(layout, files.get(i).all());
            if (cuts) {
                writeDownCut(layout);
            }
        }
        if (quote) {
            SheathQuote quotes = new SheathQuote(
                    priceList.orElseThrow(),
                    leather,
                    folder,
                    paper,
                    spec.commandLine().getOut());
            made.values().forEach(each -> quotes.make(each.name, each.job, each.pattern, layouts));
        }
    }

    private StockLayout onOne(Stock panel, List<SheathPieces> kinds, Budget budget) {
        LeatherLayout search = new LeatherLayout(panel, stock.spacing(), seed);
        return wanted.most
                ? search.most(kinds, budget, better -> report(better, budget))
                : search.shortest(inTurn(kinds, wanted.number()), budget, better -> report(better, budget));
    }

    /** By the price of leather where all stock has one, else by area. */
    private List<StockLayout> onSeveral(
            List<Stock> stocks, List<SheathPieces> kinds, LeatherPrices leather, Budget budget) {
        boolean priced = stocks.stream()
                .allMatch(each -> leather.own().containsKey(each.name())
                        || leather.usual().isPresent());
        return new SeveralStocks(stocks, stock.spacing(), seed)
                .fill(
                        kinds,
                        wanted.most ? OptionalInt.empty() : OptionalInt.of(wanted.number()),
                        layout -> priced ? leather.of(layout).orElseThrow().doubleValue() : layout.usedAreaMm2(),
                        budget,
                        better -> report(better, budget));
    }

    /** The prices where they can be read; without a quote, a layout does not depend on them. */
    private Optional<PriceList> ifReadable() {
        return PriceWarning.ifReadable(priceFile(), spec.commandLine().getOut());
    }

    private Path priceFile() {
        return prices == null ? PriceFile.standard() : prices;
    }

    private void writeDownCut(StockLayout layout) {
        Optional<Stock> rest = layout.rest(offcut);
        PrintWriter out = spec.commandLine().getOut();
        if (rest.isEmpty()) {
            out.println(TEXTS.text(
                    "layout-command.nothing-useful-is-left-of", layout.stock().name()));
            return;
        }
        shelf.cut(rest.get());
        out.println(TEXTS.text(
                "layout-command.written-down-as-cut-from", layout.stock().name()));
    }

    /** A job with what is made from it. */
    private record Made(String name, Job job, Pattern pattern, SheathPieces pieces) {}

    private Made made(Path file, String name) {
        Job job = JobFile.read(file);
        Pattern pattern = job.assumingUsualThicknesses().pattern();
        return new Made(name, job, pattern, stock.pieces(name, pattern));
    }

    private void printAssumed(Made made) {
        KnifeOptions.assumed(made.job.settings(), TEXTS.text("layout-command.measure-it-and-give-it"))
                .forEach(line -> spec.commandLine().getOut().println(made.name + ": " + line));
    }

    private void check() {
        if (!(seconds > 0 && seconds <= LONGEST_SECONDS) || (passes != null && passes < 1)) {
            throw new UserFacingException(
                    passes == null
                            ? TEXTS.text("layout-command.a-search-cannot-last-seconds", String.valueOf(seconds))
                            : TEXTS.text("layout-command.a-search-cannot-last-passes", passes),
                    TEXTS.text("layout-command.give-a-number-of-seconds"));
        }
        int count = wanted.number();
        if (count < 1 || count > MOST_SHEATHS) {
            throw new UserFacingException(
                    TEXTS.text("layout-command.sheaths-cannot-be-laid-out", count),
                    TEXTS.text("layout-command.give-a-number-from-1", MOST_SHEATHS));
        }
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
                TEXTS.text(
                        "layout-command.sheaths-on",
                        better.sheaths().size(),
                        new Length(better.usedLengthMm()).inMillimetres()),
                budget.used());
    }

    private void print(StockLayout layout, List<Path> files) {
        PrintWriter out = spec.commandLine().getOut();
        Length used = new Length(layout.usedLengthMm());
        out.println(TEXTS.text("layout-command.sheaths", layout.sheaths().size()));
        layout.sheaths().stream()
                .map(SheathPieces::name)
                .distinct()
                .forEach(name -> out.println("  " + name + ": " + layout.count(name)));
        out.println(TEXTS.text("layout-command.used-of-the-length", used.inMillimetres(), used.inInches()));
        out.println(TEXTS.text(
                "layout-command.leather-covered-by-pieces-of",
                100 * layout.piecesAreaMm2() / layout.stock().usable().getArea()));
        files.forEach(file -> out.println(TEXTS.text("layout-command.written", file)));
    }
}
