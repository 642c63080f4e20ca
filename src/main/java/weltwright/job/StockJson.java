package weltwright.job;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.Stock;

/** A file of the shelf: what the stock is, and what it was before each cut. */
@JsonNaming(SnakeCaseStrategy.class)
record StockJson(
        String format,
        int version,
        String name,
        @JsonSetter(nulls = Nulls.SET) @Nullable Double thicknessMm,
        String kind,
        @JsonSetter(nulls = Nulls.SET) @Nullable Price price,
        List<State> states) {
    static final String FORMAT = "weltwright stock";
    private static final int VERSION = 2;
    private static final int GREATEST_POINTS = 20_000;
    private static final double GREATEST_MM = 10_000;
    private static final double MM2_IN_SQUARE_METRE = 1e6;

    static StockJson of(ShelvedStock item) {
        return of(item, List.of(State.of(item.stock())));
    }

    private static StockJson of(ShelvedStock item, List<State> states) {
        OptionalDouble thickness = item.stock().thicknessMm();
        return new StockJson(
                FORMAT,
                VERSION,
                item.name(),
                thickness.isPresent() ? thickness.getAsDouble() : null,
                item.kind(),
                item.price().map(Price::of).orElse(null),
                List.copyOf(states));
    }

    /** Reads a file, also of an earlier version. */
    static StockJson read(byte[] json) throws IOException {
        JsonNode tree = JobFile.JSON.readTree(json);
        if (tree instanceof ObjectNode first && tree.path("version").asInt() == 1) {
            first.put("version", VERSION).put("kind", "").putNull("price"); // neither was written down
        }
        tree.path("states").forEach(State::complete);
        return JobFile.JSON.treeToValue(tree, StockJson.class);
    }

    /** Whether it says that it is such a file, of a version that can be read. */
    boolean isReadable() {
        return FORMAT.equals(format) && version == VERSION;
    }

    /**
     * What is left of the stock, with what is told of it.
     *
     * @throws IllegalArgumentException, NullPointerException or IndexOutOfBoundsException where the file is broken
     */
    ShelvedStock item() {
        return new ShelvedStock(current(), kind, Optional.ofNullable(price).map(Price::price));
    }

    /** What is left of the stock. */
    Stock current() {
        return stock(states.get(states.size() - 1));
    }

    private Stock stock(State state) {
        return state.stock(name, thicknessMm == null ? OptionalDouble.empty() : OptionalDouble.of(thicknessMm));
    }

    Optional<LeatherPrice> priceByArea() {
        return Optional.ofNullable(price).map(Price::price).map(paid -> {
            if (paid.per() != LeatherPrice.Per.STOCK) {
                return paid;
            }
            BigDecimal squareMetres =
                    BigDecimal.valueOf(stock(states.get(0)).usable().getArea() / MM2_IN_SQUARE_METRE);
            return new LeatherPrice(
                    paid.amount().divide(squareMetres, MathContext.DECIMAL64), LeatherPrice.Per.SQUARE_METRE);
        });
    }

    /** With other entries. Cuts can still be undone where the outline stays as it is. */
    StockJson replacedBy(ShelvedStock changed) {
        return current().outline().equals(changed.stock().outline()) ? of(changed, states) : of(changed);
    }

    /** After a cut. */
    StockJson cutTo(Stock rest) {
        List<State> all = new ArrayList<>(states);
        all.add(State.of(rest));
        return with(all);
    }

    /** Before the last cut; empty where nothing was cut. */
    Optional<StockJson> beforeCut() {
        return states.size() < 2 ? Optional.empty() : Optional.of(with(states.subList(0, states.size() - 1)));
    }

    private StockJson with(List<State> other) {
        return new StockJson(format, version, name, thicknessMm, kind, price, List.copyOf(other));
    }

    record Price(BigDecimal amount, LeatherPrice.Per per) {
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

    /** Lines of pairs in mm. */
    record State(double[][] outline, List<double[][]> flaws, List<double[][]> poorer) {
        /** Reads an outline whose flaws and poorer parts may be missing. */
        static State read(byte[] json) throws IOException {
            JsonNode tree = JobFile.JSON.readTree(json);
            complete(tree);
            return JobFile.JSON.treeToValue(tree, State.class);
        }

        /** Puts empty lists for what is missing. */
        private static void complete(JsonNode tree) {
            if (tree instanceof ObjectNode state) {
                for (String lines : List.of("flaws", "poorer")) {
                    if (state.path(lines).isMissingNode() || state.path(lines).isNull()) {
                        state.putArray(lines);
                    }
                }
            }
        }

        static State of(Stock stock) {
            return new State(
                    pairs(stock.outline()),
                    stock.flaws().stream().map(State::pairs).toList(),
                    stock.poorer().stream().map(State::pairs).toList());
        }

        Stock stock(String name, OptionalDouble thicknessMm) {
            return new Stock(name, line(outline), lines(flaws), lines(poorer), thicknessMm);
        }

        private static List<Polyline> lines(List<double[][]> all) {
            return all.stream().map(State::line).toList();
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
