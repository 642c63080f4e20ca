package weltwright.app.cli;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.error.UserFacingException;
import weltwright.hide.HideTrace;
import weltwright.hide.HideTracer;
import weltwright.image.Photo;
import weltwright.job.JobFields;
import weltwright.job.PhoneLensStore;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.Stock;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.units.Length;

@Command(name = "stock", mixinStandardHelpOptions = true, sortOptions = false)
final class StockCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(StockCommand.class);

    private final TerminalProgress terminal;
    private final PhoneLensStore lensStore;
    private final StockShelf shelf;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "NAME", arity = "0..1", descriptionKey = "stock-name")
    private @Nullable String name;

    @ArgGroup
    private Change change = new Change();

    private static final class Change {
        @Option(names = "--size", paramLabel = "SIZE")
        private @Nullable String size;

        @Option(names = "--outline", paramLabel = "FILE")
        private @Nullable Path outline;

        @Option(names = "--photo", paramLabel = "PHOTO")
        private @Nullable Path photo;

        @Option(names = "--undo")
        private boolean undo;

        @Option(names = "--remove")
        private boolean remove;
    }

    @Option(names = "--thickness", paramLabel = "LENGTH")
    private @Nullable String thickness;

    @Option(names = "--leather-kind", paramLabel = "TEXT", defaultValue = "")
    private String kind;

    @Option(names = "--price", paramLabel = "AMOUNT")
    private @Nullable BigDecimal price;

    @Option(names = "--price-per", paramLabel = "UNIT", defaultValue = "stock")
    private LeatherPrice.Per per;

    @Mixin
    private HidePhotoOptions photoOptions;

    StockCommand(TerminalProgress terminal, PhoneLensStore lensStore, StockShelf shelf) {
        this.terminal = terminal;
        this.lensStore = lensStore;
        this.shelf = shelf;
    }

    @Override
    public void run() {
        PrintWriter out = spec.commandLine().getOut();
        boolean changes =
                change.size != null || change.outline != null || change.photo != null || change.undo || change.remove;
        if (name == null) {
            if (changes) {
                throw new UserFacingException(
                        TEXTS.text("stock-command.the-stock-has-no-name"),
                        TEXTS.text("stock-command.say-what-it-is-to"));
            }
            StockShelf.Contents contents = shelf.contents();
            contents.items().forEach(item -> print(item, out));
            contents.unreadable()
                    .forEach(file -> spec.commandLine()
                            .getErr()
                            .println(TEXTS.text("stock-command.cannot-be-read-so-its", file)));
            return;
        }
        OptionalDouble thicknessMm = StockSize.thickness(thickness);
        if (change.size != null) {
            StockSize size = StockSize.read(change.size);
            add(Stock.panel(name, size.lengthMm(), size.heightMm(), thicknessMm));
        } else if (change.outline != null) {
            add(StockShelf.outline(change.outline, name, thicknessMm));
        } else if (change.photo != null) {
            add(traced(name, change.photo, thicknessMm));
        } else if (change.undo) {
            shelf.undo(name);
        } else if (change.remove) {
            shelf.remove(name);
            out.println(TEXTS.text("stock-command.removed", name));
            return;
        }
        print(shelf.item(name), out);
    }

    private void add(Stock stock) {
        Optional<LeatherPrice> own = Optional.ofNullable(price).map(amount -> new LeatherPrice(checked(amount), per));
        shelf.add(new ShelvedStock(stock, JobFields.STOCK_KIND.read(kind), own));
    }

    private static BigDecimal checked(BigDecimal amount) {
        JobFields.PRICE.checked(amount.doubleValue());
        return amount;
    }

    private Stock traced(String called, Path file, OptionalDouble thicknessMm) {
        Photo photo = Photo.read(file);
        HideTrace trace;
        try (terminal) {
            trace = HideTracer.trace(
                    photo, photoOptions.settings(photo, lensStore), photoOptions.hide(thicknessMm), terminal);
        }
        PrintWriter out = spec.commandLine().getOut();
        out.println(TEXTS.text(
                "stock-command.traced-with-holes-and-flaws", trace.flaws().size(), trace.mmPerPx()));
        return new Stock(called, trace.outline(), trace.flaws(), trace.poorer(), thicknessMm);
    }

    private static void print(ShelvedStock item, PrintWriter out) {
        Stock stock = item.stock();
        Envelope extent = stock.outline().polygon().getEnvelopeInternal();
        out.println(TEXTS.text(
                "stock-command.cm",
                stock.name(),
                new Length(extent.getWidth()).inMillimetres(),
                new Length(extent.getHeight()).inMillimetres(),
                stock.thicknessMm().isPresent()
                        ? TEXTS.text(
                                "stock-command.thick",
                                new Length(stock.thicknessMm().getAsDouble()).inMillimetres())
                        : "",
                stock.usable().getArea() / 100,
                item.kind().isEmpty() ? "" : ", " + item.kind(),
                item.price()
                        .map(own -> TEXTS.text(
                                "stock-command.per",
                                Language.decimal(own.amount().toPlainString()),
                                own.per().name().toLowerCase(Locale.ROOT).replace('_', ' ')))
                        .orElse("")));
    }
}
