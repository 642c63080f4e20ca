package weltwright.job;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.InputFile;
import weltwright.io.UserDirectory;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.Stock;

/**
 * The leather that the maker has, one JSON file for each piece of stock. A file keeps what the stock was before each
 * cut, so that a cut can be undone.
 *
 * @param folder of the files; made with the first stock
 */
public record StockShelf(Path folder) {
    private static final String ENDING = ".json";
    private static final String FORMAT = "weltwright stock";
    private static final FileKind KIND = FileKind.of("a piece of stock", "\"" + FORMAT + "\"");
    private static final int VERSION = 2;
    private static final int GREATEST_BYTES = 4_000_000;
    private static final int GREATEST_POINTS = 20_000;
    private static final double GREATEST_MM = 10_000;

    /** The shelf of this computer's user. */
    public static StockShelf standard() {
        return new StockShelf(UserDirectory.SETTINGS.path().resolve("stock"));
    }

    /** All stock that can be read, sorted by name. */
    public List<Stock> all() {
        return items().stream().map(ShelvedStock::stock).toList();
    }

    /** All stock that can be read, with what the maker wrote down of it, sorted by name. */
    public List<ShelvedStock> items() {
        List<ShelvedStock> all = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + ENDING)) {
                for (Path file : files) {
                    all.add(read(file).item());
                }
            } catch (IOException e) {
                throw new UserFacingException(
                        "The folder " + folder + " cannot be read.", "Check that you may read it.", e);
            }
        }
        all.sort(Comparator.comparing(ShelvedStock::name));
        return all;
    }

    /** The stock of a name. Throws {@link UserFacingException} where there is none. */
    public Stock named(String name) {
        return read(existing(name)).current();
    }

    /** Puts new stock on the shelf. Throws {@link UserFacingException} where there is one of its name. */
    public void add(Stock stock) {
        add(new ShelvedStock(stock, "", Optional.empty()));
    }

    /**
     * Puts new stock on the shelf, with what the maker writes down of it. Throws {@link UserFacingException} where
     * there is one of its name.
     */
    public void add(ShelvedStock item) {
        Path file = file(item.name());
        if (Files.exists(file)) {
            throw new UserFacingException(
                    "There is stock called \"" + item.name() + "\" already.", "Give the new one another name.");
        }
        write(file, Document.of(item, List.of(State.of(item.stock()))));
    }

    /**
     * Replaces stock, also under another name. Cuts can still be undone where its outline stays as it is.
     *
     * @param name its name so far
     */
    public void replace(String name, ShelvedStock changed) {
        Path before = existing(name);
        Path after = file(changed.name());
        if (!before.equals(after)) {
            add(changed);
        }
        Document document = read(before);
        boolean sameOutline =
                document.current().outline().equals(changed.stock().outline());
        write(after, Document.of(changed, sameOutline ? document.states : List.of(State.of(changed.stock()))));
        if (!before.equals(after)) {
            remove(name);
        }
    }

    /** Replaces stock by what a cut has left of it. */
    public void cut(Stock rest) {
        Path file = existing(rest.name());
        Document document = read(file);
        List<State> states = new ArrayList<>(document.states);
        states.add(State.of(rest));
        write(file, document.with(states));
    }

    /** Undoes the last cut. Throws {@link UserFacingException} where the stock is whole. */
    public Stock undo(String name) {
        Path file = existing(name);
        Document document = read(file);
        int states = document.states.size();
        if (states < 2) {
            throw new UserFacingException(
                    "Nothing has been cut from \"" + name + "\".", "Name stock from which something was cut.");
        }
        Document before = document.with(document.states.subList(0, states - 1));
        write(file, before);
        return before.current();
    }

    /** Takes stock from the shelf. */
    public void remove(String name) {
        try {
            Files.delete(existing(name));
        } catch (IOException e) {
            throw new UserFacingException(
                    "The stock \"" + name + "\" cannot be removed.", "Check that you may write in " + folder + ".", e);
        }
    }

    private Path existing(String name) {
        Path file = file(name);
        if (!Files.exists(file)) {
            List<String> names = all().stream().map(Stock::name).toList();
            throw new UserFacingException(
                    "There is no stock called \"" + name + "\".",
                    names.isEmpty()
                            ? "Put some on the shelf first (stock)."
                            : "Name one of these: " + String.join(", ", names) + ".");
        }
        return file;
    }

    private Path file(String name) {
        String plain = name.strip().toLowerCase(Locale.ROOT);
        String safe = plain.replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        boolean whole = safe.equals(plain);
        return folder.resolve((whole ? safe : safe + "-" + Integer.toHexString(plain.hashCode())) + ENDING);
    }

    private void write(Path file, Document document) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UserFacingException(
                    "The folder " + folder + " cannot be made.", "Check that you may write there.", e);
        }
        AtomicFile.of(file, KIND).write(out -> out.write(JobFile.JSON.writeValueAsBytes(document)));
    }

    private static Document read(Path file) {
        byte[] json = InputFile.read(file, GREATEST_BYTES, "stock" + ENDING);
        Document document;
        try {
            JsonNode tree = JobFile.JSON.readTree(json);
            if (tree instanceof ObjectNode first && tree.path("version").asInt() == 1) {
                first.put("version", 2).put("kind", "").putNull("price"); // neither was written down
            }
            document = JobFile.JSON.treeToValue(tree, Document.class);
        } catch (IOException e) {
            throw notStock(file, e);
        }
        if (!FORMAT.equals(document.format) || document.version != VERSION) {
            throw notStock(file, null);
        }
        try {
            document.item();
        } catch (IllegalArgumentException | NullPointerException | IndexOutOfBoundsException e) {
            throw notStock(file, e);
        }
        return document;
    }

    /**
     * Reads an outline with flaws from a file of the maker's own.
     *
     * @param file JSON with {@code outline}, a list of pairs in mm, and {@code flaws}, a list of such lists, which may
     *     be missing
     */
    public static Stock outline(Path file, String name, OptionalDouble thicknessMm) {
        byte[] json = InputFile.read(file, GREATEST_BYTES, "hide" + ENDING);
        try {
            State state = JobFile.JSON.readValue(json, State.class);
            return state.stock(name, thicknessMm);
        } catch (IOException | IllegalArgumentException | NullPointerException | IndexOutOfBoundsException e) {
            throw notStock(file, e);
        }
    }

    private static UserFacingException notStock(Path file, @Nullable Exception cause) {
        return new UserFacingException(
                file + " is no outline of stock in the form that the program reads.",
                "Give JSON with \"outline\": [[x, y], ...] in mm, and \"flaws\": lists like it.",
                cause);
    }

    private static @Nullable Double thickness(Stock stock) {
        return stock.thicknessMm().isPresent() ? stock.thicknessMm().getAsDouble() : null;
    }

    @JsonNaming(SnakeCaseStrategy.class)
    private record Document(
            String format,
            int version,
            String name,
            @JsonSetter(nulls = Nulls.SET) @Nullable Double thicknessMm,
            String kind,
            @JsonSetter(nulls = Nulls.SET) @Nullable Price price,
            List<State> states) {
        static Document of(ShelvedStock item, List<State> states) {
            return new Document(
                    FORMAT,
                    VERSION,
                    item.name(),
                    thickness(item.stock()),
                    item.kind(),
                    item.price().map(Price::of).orElse(null),
                    List.copyOf(states));
        }

        ShelvedStock item() {
            return new ShelvedStock(current(), kind, Optional.ofNullable(price).map(Price::price));
        }

        Stock current() {
            return states.get(states.size() - 1)
                    .stock(name, thicknessMm == null ? OptionalDouble.empty() : OptionalDouble.of(thicknessMm));
        }

        Document with(List<State> other) {
            return new Document(format, version, name, thicknessMm, kind, price, List.copyOf(other));
        }
    }

    private record Price(BigDecimal amount, LeatherPrice.Per per) {
        static Price of(LeatherPrice price) {
            return new Price(price.amount(), price.per());
        }

        LeatherPrice price() {
            if (amount.signum() < 0) {
                throw new IllegalArgumentException("a price of " + amount);
            }
            return new LeatherPrice(amount, per);
        }
    }

    private record State(
            double[][] outline,
            @JsonSetter(nulls = Nulls.SET) @Nullable List<double[][]> flaws) {
        static State of(Stock stock) {
            return new State(
                    pairs(stock.outline()),
                    stock.flaws().stream().map(State::pairs).toList());
        }

        Stock stock(String name, OptionalDouble thicknessMm) {
            List<Polyline> lines = new ArrayList<>();
            if (flaws != null) {
                flaws.forEach(flaw -> lines.add(line(flaw)));
            }
            return new Stock(name, line(outline), lines, thicknessMm);
        }

        private static double[][] pairs(Polyline line) {
            return line.points().stream().map(p -> new double[] {p.x(), p.y()}).toArray(double[][]::new);
        }

        private static Polyline line(double[][] pairs) {
            List<Point> points = new ArrayList<>();
            for (double[] pair : pairs) {
                if (pair.length != 2 || Math.abs(pair[0]) > GREATEST_MM || Math.abs(pair[1]) > GREATEST_MM) {
                    throw new IllegalArgumentException("a point that is no pair of mm");
                }
                points.add(new Point(pair[0], pair[1]));
            }
            if (points.size() > GREATEST_POINTS) {
                throw new IllegalArgumentException("an outline of " + points.size() + " points");
            }
            Polyline closed = Polyline.closed(points);
            if (closed.signedAreaMm2() == 0) {
                throw new IllegalArgumentException("an outline without area");
            }
            return closed;
        }
    }
}
