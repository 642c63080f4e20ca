package weltwright.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import weltwright.error.UserFacingException;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;

/**
 * Stocks of about one thickness, and the pieces of each sheath that are cut from them.
 *
 * <p>Each stock belongs to the thickness of piece nearest to its own. A thickness without stock of its own shares that
 * of a near one, or is cut from stock that tells no thickness. Where all thicknesses have stock, stock that tells none
 * is for the thickest.
 *
 * @param stocks each of which suits all pieces
 * @param parts of each kind of sheath, in their order; empty ones where no piece of that kind is of this leather
 */
record StockGroup(List<Stock> stocks, List<SheathPieces> parts) {
    private static final Messages TEXTS = Messages.of(StockGroup.class);

    StockGroup {
        stocks = List.copyOf(stocks);
        parts = List.copyOf(parts);
    }

    /** Thicknesses of pieces that share stocks, in mm. */
    private record Shares(List<Double> thicknesses, List<Stock> stocks) {
        boolean takes(double thicknessMm) {
            return stocks.stream().allMatch(stock -> stock.suits(thicknessMm));
        }
    }

    /**
     * All groups that have pieces, the thickest first.
     *
     * @throws UserFacingException where a piece has no stock
     */
    static List<StockGroup> of(List<Stock> stocks, List<SheathPieces> kinds) {
        TreeSet<Double> thicknesses = new TreeSet<>(Comparator.reverseOrder());
        kinds.forEach(kind ->
                kind.pieces().forEach(piece -> thicknesses.add(piece.piece().thicknessMm())));
        List<Stock> untold =
                stocks.stream().filter(stock -> stock.thicknessMm().isEmpty()).toList();
        List<Shares> shares = new ArrayList<>();
        List<Double> without = new ArrayList<>();
        for (double thickness : thicknesses) {
            List<Stock> own = stocks.stream()
                    .filter(stock -> stock.suits(thickness) && nearest(stock, thicknesses) == thickness)
                    .toList();
            if (own.isEmpty()) {
                without.add(thickness);
            } else {
                shares.add(new Shares(new ArrayList<>(List.of(thickness)), new ArrayList<>(own)));
            }
        }
        List<Double> left = new ArrayList<>();
        for (double thickness : without) {
            Optional<Shares> near = shares.stream()
                    .filter(share -> share.takes(thickness))
                    .min(Comparator.comparingDouble(share -> Math.abs(share.thicknesses.get(0) - thickness)));
            near.ifPresentOrElse(share -> share.thicknesses.add(thickness), () -> left.add(thickness));
        }
        if (!left.isEmpty()) {
            if (untold.isEmpty()) {
                throw tooFew(left.get(0), kinds);
            }
            shares.add(new Shares(left, untold));
        } else if (!shares.isEmpty()) {
            shares.get(0).stocks.addAll(untold);
        }
        return shares.stream()
                .map(share -> new StockGroup(
                        share.stocks,
                        kinds.stream()
                                .map(kind -> part(kind, share.thicknesses))
                                .toList()))
                .toList();
    }

    /** The thickness of piece nearest to that of a stock; NaN where it does not tell its own. */
    private static double nearest(Stock stock, TreeSet<Double> thicknesses) {
        return stock.thicknessMm().isEmpty()
                ? Double.NaN
                : thicknesses.stream()
                        .min(Comparator.comparingDouble(
                                mm -> Math.abs(mm - stock.thicknessMm().getAsDouble())))
                        .orElse(Double.NaN);
    }

    private static SheathPieces part(SheathPieces kind, List<Double> thicknesses) {
        return new SheathPieces(
                kind.name(),
                kind.pieces().stream()
                        .filter(piece -> thicknesses.contains(piece.piece().thicknessMm()))
                        .toList());
    }

    private static UserFacingException tooFew(double thicknessMm, List<SheathPieces> kinds) {
        String piece = TEXTS.text("stock-group.a-piece");
        for (SheathPieces kind : kinds) {
            for (LeatherPiece each : kind.pieces()) {
                if (each.piece().thicknessMm() == thicknessMm) {
                    piece = TEXTS.text("stock-group.the-of", each.piece().name(), kind.name());
                }
            }
        }
        return new UserFacingException(
                TEXTS.text("stock-group.is-made-of-leather-of", piece, TEXTS.text("stock-group.mm", thicknessMm)),
                TEXTS.text("stock-group.name-stock-of-this-thickness"));
    }

    /** The parts of so many whole sheaths, made in turn, that have a piece of this leather. */
    List<SheathPieces> partsOf(int sheaths) {
        List<SheathPieces> all = new ArrayList<>();
        for (int k = 0; k < sheaths; k++) {
            SheathPieces part = parts.get(k % parts.size());
            if (!part.pieces().isEmpty()) {
                all.add(part);
            }
        }
        return all;
    }

    /** The parts that have a piece of this leather, each once. */
    List<SheathPieces> inTurn() {
        return partsOf(parts.size());
    }

    /** How many whole sheaths, made in turn, so many parts in turn are enough for. */
    int wholeSheaths(int found) {
        int sheaths = 0;
        while (partsOf(sheaths + 1).size() <= found) {
            sheaths++;
        }
        return sheaths;
    }
}
