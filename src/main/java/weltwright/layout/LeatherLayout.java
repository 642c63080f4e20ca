package weltwright.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.layout.collision.TurnedShape;
import weltwright.layout.search.Budget;
import weltwright.layout.search.ContainerPacking;
import weltwright.layout.search.Layout;
import weltwright.layout.search.SearchItem;
import weltwright.layout.search.StripPacking;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;

/**
 * Lays the pieces of sheaths out on one stock: the most whole sheaths from all of it, or given sheaths from as little
 * of its length as the search finds.
 *
 * <p>Only pieces of the stock's thickness are laid out, where the stock tells its own.
 */
public final class LeatherLayout {
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
        return layout(
                packing.fill(
                        k -> items(suiting.get(k % suiting.size())),
                        atMost,
                        budget,
                        better -> improved.accept(layout(better, suiting))),
                suiting);
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
        ContainerPacking packing = new ContainerPacking(box.lengthMm(), box.heightMm(), box.fixed(), seed);
        ContainerPacking.Filling whole =
                packing.fill(k -> items(suiting.get(k)), suiting.size(), budget, filling -> {});
        if (whole.groups() < suiting.size()) {
            throw new UserFacingException(
                    "Of " + suiting.size() + " sheaths, room was found on " + stock.name() + " for " + whole.groups()
                            + ".",
                    "Take more leather or fewer sheaths, or let the search take longer.");
        }
        List<SearchItem> all = new ArrayList<>();
        suiting.forEach(sheath -> all.addAll(items(sheath)));
        Layout layout = new StripPacking(all, box.fixed(), box.heightMm(), seed)
                .shorten(whole.layout(), budget, better -> improved.accept(layout(better, suiting)));
        return layout(layout, suiting);
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
                        "No piece of " + sheath.name() + " is made of leather as thick as " + stock.name() + ".",
                        "Give the thickness of the stock as the sheath's leather has it, or leave it out.");
            }
        }
        return suiting;
    }

    private List<SearchItem> items(SheathPieces sheath) {
        return sheath.pieces().stream()
                .map(piece -> items.computeIfAbsent(piece, box::item))
                .toList();
    }

    private StockLayout layout(ContainerPacking.Filling filling, List<SheathPieces> kinds) {
        List<SheathPieces> sheaths = new ArrayList<>();
        for (int k = 0; k < filling.groups(); k++) {
            sheaths.add(kinds.get(k % kinds.size()));
        }
        return layout(filling.layout(), sheaths);
    }

    private StockLayout layout(Layout layout, List<SheathPieces> sheaths) {
        List<PlacedPiece> placed = new ArrayList<>();
        double right = 0;
        for (int k = 0; k < sheaths.size(); k++) {
            for (LeatherPiece piece : sheaths.get(k).pieces()) {
                int i = placed.size();
                TurnedShape shape = layout.shape(i);
                right = Math.max(right, layout.x(i) + shape.maxX());
                placed.add(new PlacedPiece(piece, k, motion(layout, i)));
            }
        }
        return new StockLayout(stock, sheaths, placed, box.usedLengthMm(right));
    }

    private RigidMotion motion(Layout layout, int i) {
        TurnedShape shape = layout.shape(i);
        Point reference = shape.shape().reference();
        Point turned = new RigidMotion(shape.turnRad(), new Point(0, 0)).apply(reference);
        Point place = box.onStock(new Point(layout.x(i), layout.y(i)));
        return new RigidMotion(shape.turnRad(), place.minus(turned));
    }
}
