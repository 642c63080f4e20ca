package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.error.UserFacingException;
import weltwright.job.StockShelf;
import weltwright.layout.stock.Stock;
import weltwright.units.Length;

@Command(name = "stock", mixinStandardHelpOptions = true, sortOptions = false)
final class StockCommand implements Runnable {
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

        @Option(names = "--undo")
        private boolean undo;

        @Option(names = "--remove")
        private boolean remove;
    }

    @Option(names = "--thickness", paramLabel = "LENGTH")
    private @Nullable String thickness;

    StockCommand(StockShelf shelf) {
        this.shelf = shelf;
    }

    @Override
    public void run() {
        PrintWriter out = spec.commandLine().getOut();
        boolean changes = change.size != null || change.outline != null || change.undo || change.remove;
        if (name == null) {
            if (changes) {
                throw new UserFacingException("The stock has no name.", "Say what it is to be called, or is called.");
            }
            shelf.all().forEach(stock -> print(stock, out));
            return;
        }
        OptionalDouble thicknessMm = StockSize.thickness(thickness);
        if (change.size != null) {
            StockSize size = StockSize.read(change.size);
            shelf.add(Stock.panel(name, size.lengthMm(), size.heightMm(), thicknessMm));
        } else if (change.outline != null) {
            shelf.add(StockShelf.outline(change.outline, name, thicknessMm));
        } else if (change.undo) {
            shelf.undo(name);
        } else if (change.remove) {
            shelf.remove(name);
            out.println("Removed: " + name);
            return;
        }
        print(shelf.named(name), out);
    }

    private static void print(Stock stock, PrintWriter out) {
        Envelope extent = stock.outline().polygon().getEnvelopeInternal();
        out.println(String.format(
                Locale.ROOT,
                "%s: %s × %s%s, %.0f cm²",
                stock.name(),
                new Length(extent.getWidth()).inMillimetres(),
                new Length(extent.getHeight()).inMillimetres(),
                stock.thicknessMm().isPresent()
                        ? ", " + new Length(stock.thicknessMm().getAsDouble()).inMillimetres() + " thick"
                        : "",
                stock.usable().getArea() / 100));
    }
}
