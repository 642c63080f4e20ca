package weltwright.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.layout.collision.TurnedShape;
import weltwright.layout.search.Budget;
import weltwright.layout.search.ContainerPacking;
import weltwright.layout.search.FixedShape;
import weltwright.layout.search.Layout;
import weltwright.layout.search.SearchItem;
import weltwright.layout.search.StripPacking;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;

/**
 * Lays the pieces of sheaths out on one stock: the most whole sheaths from all of it, or given sheaths from as little
 * of its length as the search finds.
 *
 * <p>Only pieces of the stock's thickness are laid out, where the stock tells its own.
 *
 * <p>On a panel without flaws straps of one width are then put in rows along the lower edge ({@link StrapRows}), and
 * the other pieces laid out anew above them. That is not left to the maker to ask for: it gives no fewer sheaths, and a
 * length greater by {@value #ROWS_LONGER} of it at most, which is less than what cutting strap by strap costs in time.
 * Where the rest finds no room on these terms, the straps stay where the search put them.
 */
public final class LeatherLayout {
    private static final Messages TEXTS = Messages.of(LeatherLayout.class);

    private static final double ROWS_LONGER = 0.03;

    /** Part of the budget for a layout with straps anywhere; the rest is for one with straps in rows. */
    private static final double ANYWHERE = 0.6;

    private final Stock stock;
    private final StockBox box;
    private final long seed;
    private final Map<LeatherPiece, SearchItem> items = new HashMap<>();

    public LeatherLayout(Stock stock, Spacing spacing, long seed) {
        this.stock = stock;
        this.seed = seed;
        box = new StockBox(stock, spacing);
    }

    /**
     * The most whole sheaths.
     *
     * @param kinds sheaths that are made in turn: first, second, ..., first again
     * @param improved told each layout with a sheath more
     * @return a layout of no sheath where not even one fits
     */
    public StockLayout most(List<SheathPieces> kinds, Budget budget, Consumer<StockLayout> improved) {
        List<SheathPieces> suiting = suiting(kinds);
        int most = 0;
        for (double area = 0; area <= box.freeMm2(); most++) {
            area += suiting.get(most % suiting.size()).areaMm2();
        }
        int atMost = most;
        ContainerPacking packing = new ContainerPacking(box.lengthMm(), box.heightMm(), box.fixed(), seed);
        boolean rows =
                mayHaveRows(Stream.concat(suiting.stream(), suiting.stream()).toList());
        StockLayout anywhere = layout(
                packing.fill(
                        k -> items(suiting.get(k % suiting.size())),
                        atMost,
                        rows ? budget.part(ANYWHERE) : budget,
                        better -> improved.accept(layout(better, suiting))),
                suiting);
        return rows ? strapsInRows(anywhere, box.lengthMm(), budget, false) : anywhere;
    }

    /**
     * Given sheaths from the least length of the stock, from its left end on.
     *
     * @param sheaths each that is to be made
     * @param improved told each shorter layout
     * @throws UserFacingException where they find no room within the budget
     */
    public StockLayout shortest(List<SheathPieces> sheaths, Budget budget, Consumer<StockLayout> improved) {
        List<SheathPieces> suiting = suiting(sheaths);
        boolean rows = mayHaveRows(suiting);
        Budget first = rows ? budget.part(ANYWHERE) : budget;
        ContainerPacking packing = new ContainerPacking(box.lengthMm(), box.heightMm(), box.fixed(), seed);
        ContainerPacking.Filling whole = packing.fill(k -> items(suiting.get(k)), suiting.size(), first, filling -> {});
        if (whole.groups() < suiting.size()) {
            throw new UserFacingException(
                    TEXTS.text(
                            "leather-layout.of-sheaths-room-was-found", suiting.size(), stock.name(), whole.groups()),
                    TEXTS.text("leather-layout.take-more-leather-or-fewer"));
        }
        List<SearchItem> all = new ArrayList<>();
        suiting.forEach(sheath -> all.addAll(items(sheath)));
        Layout shortest = new StripPacking(all, box.fixed(), box.heightMm(), seed)
                .shorten(whole.layout(), first, better -> improved.accept(layout(better, suiting)));
        StockLayout anywhere = layout(shortest, suiting);
        double longest = box.boxLengthMm(anywhere.usedLengthMm()) * (1 + ROWS_LONGER);
        return rows ? strapsInRows(anywhere, Math.min(longest, box.lengthMm()), budget, true) : anywhere;
    }

    private boolean mayHaveRows(List<SheathPieces> sheaths) {
        return box.fixed().isEmpty() && !rows(sheaths, box.lengthMm()).places().isEmpty();
    }

    private StrapRows rows(List<SheathPieces> sheaths, double lengthMm) {
        return StrapRows.of(
                sheaths.stream().flatMap(sheath -> sheath.pieces().stream()).toList(), this::item, lengthMm);
    }

    /**
     * The sheaths of a layout with straps in rows along the lower edge; the layout itself where there are none, or the
     * other pieces find no room above them.
     *
     * @param lengthMm of the box that they may use
     * @param shorten whether to use less of it if possible
     */
    private StockLayout strapsInRows(StockLayout anywhere, double lengthMm, Budget whole, boolean shorten) {
        List<SheathPieces> sheaths = anywhere.sheaths();
        StrapRows rows = rows(sheaths, lengthMm);
        double height = box.heightMm() - rows.heightMm();
        if (rows.places().isEmpty() || height < 0) {
            return anywhere;
        }
        Budget budget = whole.part(1 - ANYWHERE);
        List<List<SearchItem>> others = new ArrayList<>();
        int number = 0;
        for (SheathPieces sheath : sheaths) {
            List<SearchItem> group = new ArrayList<>();
            for (LeatherPiece piece : sheath.pieces()) {
                if (!rows.places().containsKey(number++)) {
                    group.add(item(piece));
                }
            }
            if (!group.isEmpty()) {
                others.add(group);
            }
        }
        ContainerPacking.Filling filling = new ContainerPacking(lengthMm, height, List.of(), seed)
                .fill(others::get, others.size(), budget, better -> {});
        if (filling.groups() < others.size()) {
            return anywhere;
        }
        Layout layout = filling.layout();
        if (shorten && !others.isEmpty()) {
            List<SearchItem> all = others.stream().flatMap(List::stream).toList();
            layout = new StripPacking(all, height, seed).shorten(layout, budget, better -> {});
        }
        return layout(layout, rows, sheaths);
    }

    private List<SheathPieces> suiting(List<SheathPieces> sheaths) {
        if (sheaths.isEmpty()) {
            throw new IllegalArgumentException("no sheath to lay out");
        }
        List<SheathPieces> suiting =
                sheaths.stream().map(sheath -> sheath.suiting(stock)).toList();
        for (SheathPieces sheath : suiting) {
            if (sheath.pieces().isEmpty()) {
                throw new UserFacingException(
                        TEXTS.text("leather-layout.no-piece-of-is-made", sheath.name(), stock.name()),
                        TEXTS.text("leather-layout.give-the-thickness-of-the"));
            }
        }
        return suiting;
    }

    private List<SearchItem> items(SheathPieces sheath) {
        return sheath.pieces().stream().map(this::item).toList();
    }

    private SearchItem item(LeatherPiece piece) {
        return items.computeIfAbsent(piece, box::item);
    }

    private StockLayout layout(ContainerPacking.Filling filling, List<SheathPieces> kinds) {
        List<SheathPieces> sheaths = new ArrayList<>();
        for (int k = 0; k < filling.groups(); k++) {
            sheaths.add(kinds.get(k % kinds.size()));
        }
        return layout(filling.layout(), sheaths);
    }

    private StockLayout layout(Layout layout, List<SheathPieces> sheaths) {
        return layout(layout, new StrapRows(Map.of(), 0), sheaths);
    }

    /** @param layout of the pieces that are not in the rows, above these */
    private StockLayout layout(Layout layout, StrapRows rows, List<SheathPieces> sheaths) {
        List<PlacedPiece> placed = new ArrayList<>();
        double right = 0;
        int other = 0;
        for (int k = 0; k < sheaths.size(); k++) {
            for (LeatherPiece piece : sheaths.get(k).pieces()) {
                FixedShape place = rows.places().get(placed.size());
                if (place == null) {
                    place = new FixedShape(layout.shape(other), layout.x(other), layout.y(other) + rows.heightMm());
                    other++;
                }
                right = Math.max(right, place.x() + place.shape().maxX());
                placed.add(new PlacedPiece(piece, k, motion(place)));
            }
        }
        return new StockLayout(stock, sheaths, placed, box.usedLengthMm(right));
    }

    private RigidMotion motion(FixedShape placed) {
        TurnedShape shape = placed.shape();
        Point reference = shape.shape().reference();
        Point turned = new RigidMotion(shape.turnRad(), new Point(0, 0)).apply(reference);
        Point place = box.onStock(new Point(placed.x(), placed.y()));
        return new RigidMotion(shape.turnRad(), place.minus(turned));
    }
}
