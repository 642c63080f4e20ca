package weltwright.output.print;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.RigidMotion;
import weltwright.output.PageFrame;
import weltwright.output.PaperSize;
import weltwright.output.ShapePacking;
import weltwright.output.pdf.PageBlock;
import weltwright.units.PrintScale;

/**
 * Distributes the pieces of a pattern over pages. A piece that fits on a page in any direction is not divided; a larger
 * one is shown in tiles that overlap by {@link TileGrid#OVERLAP_MM}. The legend is on the first page.
 *
 * <p>Packs first-fit in decreasing order of length, of area and of width, with the legend placed before or after the
 * pieces, and takes the plan with the fewest pages. The result is not always optimal.
 */
final class PagePlan {
    private static final GeometryFactory JTS = new GeometryFactory();

    private static final List<Comparator<PrintedDrawing>> ORDERS = List.of(
            Comparator.comparingDouble(PagePlan::lengthMm).reversed(),
            Comparator.<PrintedDrawing>comparingDouble(
                            piece -> piece.footprint().getArea())
                    .reversed(),
            Comparator.comparingDouble(PagePlan::widthMm).reversed());

    private final PageFrame empty;
    private final List<PlannedPage> pages = new ArrayList<>();

    private PagePlan(PageFrame empty) {
        this.empty = empty;
    }

    /**
     * The plan for a paper; one large page is the smallest size from A3 to A0 that shows all uncut, if there is one.
     */
    static PagePlan onPaper(
            PaperSize paper,
            PrintScale scale,
            List<? extends PrintedDrawing> pieces,
            List<? extends List<? extends PageBlock>> legend) {
        return paper == PaperSize.ONE_LARGE_PAGE
                ? onOnePage(scale, pieces, legend)
                : of(paper.frame(scale), pieces, legend);
    }

    /** From A3 on, each size of ISO 216 as long as two of the one before are wide. */
    private static PagePlan onOnePage(
            PrintScale scale, List<? extends PrintedDrawing> pieces, List<? extends List<? extends PageBlock>> legend) {
        PagePlan plan = of(PageFrame.of(297, 420, scale), pieces, legend);
        for (PageFrame size :
                List.of(PageFrame.of(420, 594, scale), PageFrame.of(594, 841, scale), PageFrame.of(841, 1189, scale))) {
            if (plan.pages().size() == 1) {
                return plan;
            }
            plan = of(size, pieces, legend);
        }
        return plan;
    }

    /**
     * @param legend what stands on the first page, in the ways that it may be printed, the one liked best first: each
     *     some blocks that together fit on a page
     */
    static PagePlan of(
            PageFrame empty, List<? extends PrintedDrawing> pieces, List<? extends List<? extends PageBlock>> legend) {
        double freeMm2 = empty.free().getArea();
        double piecesMm2 = pieces.stream()
                .mapToDouble(piece -> piece.footprint().getArea())
                .sum();
        double fewest = Math.max(1, Math.ceil(piecesMm2 / freeMm2));
        PagePlan best = null;
        for (boolean legendFirst : new boolean[] {true, false}) {
            for (Comparator<PrintedDrawing> order : ORDERS) {
                if (best == null || best.pages.size() > fewest) {
                    PagePlan plan = of(empty, sorted(pieces, order), legend, legendFirst);
                    best = best == null || plan.pages.size() < best.pages.size() ? plan : best;
                }
            }
        }
        return Objects.requireNonNull(best);
    }

    private static PagePlan of(
            PageFrame empty,
            List<PrintedDrawing> pieces,
            List<? extends List<? extends PageBlock>> legend,
            boolean legendFirst) {
        PagePlan plan = new PagePlan(empty);
        if (legendFirst) {
            plan.pages.add(plan.pageOf(legend));
        }
        pieces.forEach(plan::add);
        if (!legendFirst) {
            plan.addInFront(legend);
        }
        return plan;
    }

    private static List<PrintedDrawing> sorted(
            List<? extends PrintedDrawing> pieces, Comparator<PrintedDrawing> order) {
        List<PrintedDrawing> sorted = new ArrayList<>(pieces);
        sorted.sort(order);
        return sorted;
    }

    /** Returns whether a piece is shown in tiles on several pages. */
    boolean hasTiles() {
        return pages.stream().anyMatch(page -> page.tile().isPresent());
    }

    List<PlannedPage> pages() {
        return List.copyOf(pages);
    }

    private static double lengthMm(PrintedDrawing piece) {
        Envelope box = piece.footprint().getEnvelopeInternal();
        return Math.max(box.getWidth(), box.getHeight());
    }

    private static double widthMm(PrintedDrawing piece) {
        Envelope box = piece.footprint().getEnvelopeInternal();
        return Math.min(box.getWidth(), box.getHeight());
    }

    private void add(PrintedDrawing piece) {
        for (List<Double> directions : List.of(ShapePacking.QUARTERS, ShapePacking.ASLANT)) {
            for (PlannedPage page : pages) {
                Optional<RigidMotion> place = ShapePacking.find(piece.footprint(), page.free(), directions);
                if (place.isPresent()) {
                    place(piece, page, place.get());
                    return;
                }
            }
        }
        Optional<RigidMotion> alone = ShapePacking.find(piece.footprint(), empty.free(), ShapePacking.QUARTERS)
                .or(() -> ShapePacking.find(piece.footprint(), empty.free(), ShapePacking.ASLANT));
        if (alone.isPresent()) {
            place(piece, newPage(), alone.get());
        } else {
            tile(piece);
        }
    }

    private static void place(PrintedDrawing piece, PlannedPage page, RigidMotion place) {
        page.place(piece, place, ShapePacking.moved(piece.footprint(), place));
    }

    /**
     * On the first page that has room for all of it, which then comes first; else on a page of its own before the
     * others.
     */
    private void addInFront(List<? extends List<? extends PageBlock>> ways) {
        for (PlannedPage page : pages) {
            Optional<PlannedPage> with = with(ways, page);
            if (with.isPresent()) {
                pages.remove(page);
                pages.add(0, with.get());
                return;
            }
        }
        pages.add(0, pageOf(ways));
    }

    private PlannedPage pageOf(List<? extends List<? extends PageBlock>> ways) {
        return ways.isEmpty()
                ? new PlannedPage(empty)
                : with(ways, new PlannedPage(empty))
                        .orElseThrow(() -> new IllegalStateException("a legend that is larger than a page"));
    }

    /** The page with the blocks of the first way that it has room for. */
    private static Optional<PlannedPage> with(List<? extends List<? extends PageBlock>> ways, PlannedPage page) {
        for (List<? extends PageBlock> blocks : ways) {
            PlannedPage with = page.copy();
            if (blocks.stream().allMatch(block -> placeIfItFits(block, with))) {
                return Optional.of(with);
            }
        }
        return Optional.empty();
    }

    /** Puts a block, in one of its shapes, where there is room, else on a new page. */
    void add(List<? extends PageBlock> shapes) {
        if (!addBesideOthers(shapes)) {
            pages.add(pageOf(shapes.stream().map(List::of).toList()));
        }
    }

    /** One more block, if there is room for it on the pages that are there. */
    boolean addBesideOthers(List<? extends PageBlock> shapes) {
        return pages.stream().anyMatch(page -> shapes.stream().anyMatch(block -> placeIfItFits(block, page)));
    }

    private static boolean placeIfItFits(PageBlock block, PlannedPage page) {
        double gap = 3;
        Geometry box = JTS.toGeometry(new Envelope(-gap, block.widthMm() + gap, -block.heightMm() - gap, gap));
        Optional<RigidMotion> place = ShapePacking.find(box, page.free(), List.of(0.0));
        place.ifPresent(p -> page.place(block, p.shift(), ShapePacking.moved(box, p)));
        return place.isPresent();
    }

    /** Shows the piece in tiles, in the way that takes the fewest pages. */
    private void tile(PrintedDrawing piece) {
        TileGrid grid = empty.windows().stream()
                .flatMap(window -> Stream.of(0.0, Math.PI / 2).map(turn -> TileGrid.over(piece, turn, window)))
                .min(Comparator.comparingInt(g -> g.cells().size()))
                .orElseThrow();
        for (Tile.Cell cell : grid.cells()) {
            PlannedPage.PlacedTile tile = grid.place(cell);
            List<Geometry> covered = new ArrayList<>();
            covered.add(OverlayNGRobust.overlay(
                            ShapePacking.moved(piece.footprint(), tile.placement()),
                            JTS.toGeometry(tile.window()),
                            OverlayNG.INTERSECTION)
                    .buffer(1));
            for (Tile.Side side : tile.tile().joins()) {
                covered.add(JTS.toGeometry(RegisterMarks.strip(tile.window(), side)));
            }
            newPage().show(tile, OverlayNGRobust.union(covered));
        }
    }

    private PlannedPage newPage() {
        PlannedPage page = new PlannedPage(empty);
        pages.add(page);
        return page;
    }
}
