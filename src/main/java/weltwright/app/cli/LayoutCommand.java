package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
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
import weltwright.io.FileNames;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.PriceFile;
import weltwright.job.StockShelf;
import weltwright.layout.LeatherLayout;
import weltwright.layout.SeveralStocks;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.cost.PriceList;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.cost.SheathNeeds;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.LeatherSide;
import weltwright.output.layout.QuotePdf;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.Length;

@Command(name = "layout", mixinStandardHelpOptions = true, abbreviateSynopsis = true, sortOptions = false)
final class LayoutCommand implements Runnable {
    /** More sheaths than any stock holds would only take memory. */
    private static final int MOST_SHEATHS = 200;

    private static final double LONGEST_SECONDS = 24 * 3600;

    private static final String QUOTE = "-quote.pdf";

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
        List<LayoutFiles> files = LayoutFiles.in(folder, stocks.size());
        Optional<PriceList> priceList = quote ? Optional.of(prices()) : Optional.empty();
        Map<Path, Made> made = new LinkedHashMap<>();
        JobNames.of(jobs).forEach((file, name) -> made.put(file, made(file, name)));
        List<SheathPieces> kinds = jobs.stream()
                .map(JobNames::absolute)
                .map(file -> Objects.requireNonNull(made.get(file)).pieces())
                .toList();
        Budget budget = passes == null ? Budget.seconds(seconds) : Budget.passes(passes);
        List<StockLayout> layouts;
        try (terminal) {
            terminal.at("Laying out", 0);
            layouts = stocks.size() == 1
                    ? List.of(onOne(stocks.get(0), kinds, budget))
                    : onSeveral(stocks, kinds, budget);
        }
        if (layouts.stream().allMatch(layout -> layout.sheaths().isEmpty())) {
            throw new UserFacingException(
                    "Not one whole sheath was found room for on "
                            + stocks.stream().map(Stock::name).distinct().collect(Collectors.joining(", ")) + ".",
                    "Take larger stock, smaller gaps, or let the search take longer.");
        }
        LocalDate day = made.values().iterator().next().job().begun();
        PageHeading heading = new PageHeading("", "", day, "");
        made.values().forEach(this::printAssumed);
        for (int i = 0; i < layouts.size(); i++) {
            StockLayout layout = layouts.get(i);
            files.get(i).write(layout, CutPlan.of(layout, sideUp, heading), day, paper);
            if (stocks.size() > 1) {
                spec.commandLine().getOut().println("On " + layout.stock().name() + ":");
            }
            print(layout, files.get(i).all());
            if (cuts) {
                writeDownCut(layout);
            }
        }
        priceList.ifPresent(list -> made.values().forEach(each -> quote(each, layouts, list)));
    }

    private StockLayout onOne(Stock panel, List<SheathPieces> kinds, Budget budget) {
        LeatherLayout search = new LeatherLayout(panel, stock.spacing(), seed);
        return wanted.most
                ? search.most(kinds, budget, better -> report(better, budget))
                : search.shortest(inTurn(kinds, wanted.number()), budget, better -> report(better, budget));
    }

    /** By the maker's price of leather where it is set, else by area. */
    private List<StockLayout> onSeveral(List<Stock> stocks, List<SheathPieces> kinds, Budget budget) {
        Optional<LeatherPrice> leather = PriceFile.ifSet(priceFile())
                .map(PriceList::leather)
                .filter(price -> price.amount().signum() > 0);
        return new SeveralStocks(stocks, stock.spacing(), seed)
                .fill(
                        kinds,
                        wanted.most ? OptionalInt.empty() : OptionalInt.of(wanted.number()),
                        layout -> leather.map(price -> price.of(
                                                layout.usedAreaMm2(),
                                                layout.stock().usable().getArea())
                                        .doubleValue())
                                .orElseGet(layout::usedAreaMm2),
                        budget,
                        better -> report(better, budget));
    }

    private Path priceFile() {
        return prices == null ? PriceFile.standard() : prices;
    }

    private void writeDownCut(StockLayout layout) {
        Optional<Stock> rest = layout.rest();
        PrintWriter out = spec.commandLine().getOut();
        if (rest.isEmpty()) {
            out.println("Nothing useful is left of " + layout.stock().name()
                    + " in one part; it stays on the shelf until you remove it.");
            return;
        }
        shelf.cut(rest.get());
        out.println("Written down as cut from " + layout.stock().name() + "; stock --undo takes it back.");
    }

    /** A job with what is made from it. */
    private record Made(String name, Job job, Pattern pattern, SheathPieces pieces) {}

    private Made made(Path file, String name) {
        Job job = JobFile.read(file);
        Pattern pattern = job.assumingUsualThicknesses().pattern();
        return new Made(name, job, pattern, SheathPieces.of(name, pattern, stock.stretchRule()));
    }

    private void printAssumed(Made made) {
        KnifeOptions.assumed(made.job.settings(), "Measure it and give it to make")
                .forEach(line -> spec.commandLine().getOut().println(made.name + ": " + line));
    }

    private PriceList prices() {
        Path file = priceFile();
        if (!Files.exists(file)) {
            throw new UserFacingException(
                    "There are no prices in " + file + ".", "Have a list written (prices), and fill in your own.");
        }
        PriceList list = PriceFile.read(file);
        if (list.isBlank()) {
            throw new UserFacingException(
                    "All prices in " + file + " are 0.", "Fill in your own in a text editor, and save it.");
        }
        return list;
    }

    /**
     * Prints what a sheath costs on the first stock that it is laid out on, and writes its quote; of a sheath that is
     * not laid out, neither.
     */
    private void quote(Made made, List<StockLayout> layouts, PriceList list) {
        Optional<StockLayout> first =
                layouts.stream().filter(layout -> layout.count(made.name) > 0).findFirst();
        if (first.isEmpty()) {
            return;
        }
        SheathPieces laid = first.get().sheaths().stream()
                .filter(sheath -> sheath.name().equals(made.name))
                .findFirst()
                .orElseThrow();
        SheathCost cost = SheathCost.of(SheathNeeds.of(first.get(), laid, made.pattern), list);
        PrintWriter out = spec.commandLine().getOut();
        out.println(made.name + ", one sheath:");
        line(out, "leather, waste included", cost.words(cost.leather()));
        line(out, "hardware", cost.words(cost.hardware()));
        line(out, "thread", cost.words(cost.thread()));
        line(out, "glue and finish", cost.words(cost.glueAndFinish()));
        line(out, "labour", cost.words(cost.labour()));
        line(out, "overhead", cost.words(cost.overhead()));
        line(out, "margin, with rounding", cost.words(cost.margin()));
        line(out, "price without tax", cost.words(cost.net()));
        line(out, "tax", cost.words(cost.tax()));
        line(out, "price", cost.words(cost.gross()));
        Path file = folder.resolve(FileNames.truncated(JobNames.inFileName(made.name), List.of(QUOTE)) + QUOTE);
        PageHeading heading =
                new PageHeading(made.job.customer(), made.job.knifeName(), made.job.begun(), made.job.notes());
        QuotePdf.write(made.pattern, cost, heading, paper, file);
        out.println("Written: " + file);
    }

    private static void line(PrintWriter out, String what, String amount) {
        out.printf(Locale.ROOT, "  %-24s %14s%n", what, amount);
    }

    private void check() {
        if (!(seconds > 0 && seconds <= LONGEST_SECONDS) || (passes != null && passes < 1)) {
            throw new UserFacingException(
                    "A search cannot last " + (passes == null ? seconds + " seconds" : passes + " passes") + ".",
                    "Give a number of seconds of at most a day, or at least one pass.");
        }
        int count = wanted.number();
        if (count < 1 || count > MOST_SHEATHS) {
            throw new UserFacingException(
                    count + " sheaths cannot be laid out.", "Give a number from 1 to " + MOST_SHEATHS + ".");
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
