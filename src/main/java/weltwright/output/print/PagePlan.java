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
import weltwright.output.ShapePacking;
import weltwright.output.pdf.PageBlock;

/**
 * Distributes the pieces of a pattern over pages. A piece that fits on a page in any direction is not divided; a larger
 * one is shown in tiles that overlap by {@link TileGrid#OVERLAP_MM}. The legend is on the first page.
 *
 * <p>Packs first-fit in decreasing order of length, of area and of width, with the legend placed before or after the
 * pieces, and takes the plan with the fewest pages. The result is not always optimal.
 */
final class PagePlan {
    private static final GeometryFactory JTS = new GeometryFactory();

    private static final List<Comparator<PieceDrawing>> ORDERS = List.of(
            Comparator.comparingDouble(PagePlan::lengthMm).reversed(),
            Comparator.<PieceDrawing>comparingDouble(piece -> piece.footprint().getArea())
                    .reversed(),
            Comparator.comparingDouble(PagePlan::widthMm).reversed());

    private final PageFrame empty;
    private final List<PlannedPage> pages = new ArrayList<>();

    private PagePlan(PageFrame empty) {
        this.empty = empty;
    }

    /**
     * @param readFirst what stands on the first page, in the ways that it may be printed, the one liked best first:
     *     each some blocks that together fit on a page
     */
    static PagePlan of(
            PageFrame empty, List<PieceDrawing> pieces, List<? extends List<? extends PageBlock>> readFirst) {
        double freeMm2 = empty.free().getArea();
        double piecesMm2 = pieces.stream()
                .mapToDouble(piece -> piece.footprint().getArea())
                .sum();
        double fewest = Math.max(1, Math.ceil(piecesMm2 / freeMm2));
        PagePlan best = null;
        for (boolean wordsFirst : new boolean[] {true, false}) {
            for (Comparator<PieceDrawing> order : ORDERS) {
                if (best == null || best.pages.size() > fewest) {
                    PagePlan plan = laid(empty, pieces.stream().sorted(order).toList(), readFirst, wordsFirst);
                    best = best == null || plan.pages.size() < best.pages.size() ? plan : best;
                }
            }
        }
        return Objects.requireNonNull(best);
    }

    private static PagePlan laid(
            PageFrame empty,
            List<PieceDrawing> pieces,
            List<? extends List<? extends PageBlock>> readFirst,
            boolean wordsFirst) {
        PagePlan plan = new PagePlan(empty);
        if (wordsFirst) {
            plan.pages.add(plan.pageOf(readFirst));
        }
        pieces.forEach(plan::add);
        if (!wordsFirst) {
            plan.addInFront(readFirst);
        }
        return plan;
    }

    /** Whether a piece is shown in parts on several pages. */
    boolean hasParts() {
        return pages.stream().anyMatch(page -> page.share().isPresent());
    }

    List<PlannedPage> pages() {
        return List.copyOf(pages);
    }

    private static double lengthMm(PieceDrawing piece) {
        Envelope box = piece.footprint().getEnvelopeInternal();
        return Math.max(box.getWidth(), box.getHeight());
    }

    private static double widthMm(PieceDrawing piece) {
        Envelope box = piece.footprint().getEnvelopeInternal();
        return Math.min(box.getWidth(), box.getHeight());
    }

    private void add(PieceDrawing piece) {
        for (List<Double> directions : List.of(ShapePacking.QUARTERS, ShapePacking.ASLANT)) {
            for (PlannedPage page : pages) {
                Optional<RigidMotion> place = ShapePacking.find(piece.footprint(), page.free(), directions);
                if (place.isPresent()) {
                    lay(piece, page, place.get());
                    return;
                }
            }
        }
        Optional<RigidMotion> alone = ShapePacking.find(piece.footprint(), empty.free(), ShapePacking.QUARTERS)
                .or(() -> ShapePacking.find(piece.footprint(), empty.free(), ShapePacking.ASLANT));
        if (alone.isPresent()) {
            lay(piece, newPage(), alone.get());
        } else {
            share(piece);
        }
    }

    private static void lay(PieceDrawing piece, PlannedPage page, RigidMotion place) {
        page.lay(piece, place, ShapePacking.moved(piece.footprint(), place));
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
                        .orElseThrow(() -> new IllegalStateException("words that are larger than a page"));
    }

    /** The page with the blocks of the first way that it has room for. */
    private static Optional<PlannedPage> with(List<? extends List<? extends PageBlock>> ways, PlannedPage page) {
        for (List<? extends PageBlock> blocks : ways) {
            PlannedPage with = page.copy();
            if (blocks.stream().allMatch(block -> layIfItFits(block, with))) {
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
        return pages.stream().anyMatch(page -> shapes.stream().anyMatch(block -> layIfItFits(block, page)));
    }

    private static boolean layIfItFits(PageBlock block, PlannedPage page) {
        double air = 3;
        Geometry box = JTS.toGeometry(new Envelope(-air, block.widthMm() + air, -block.heightMm() - air, air));
        Optional<RigidMotion> place = ShapePacking.find(box, page.free(), List.of(0.0));
        place.ifPresent(p -> page.lay(block, p.shift(), ShapePacking.moved(box, p)));
        return place.isPresent();
    }

    /** Shows the piece in parts, in the way that takes the fewest pages. */
    private void share(PieceDrawing piece) {
        TileGrid grid = empty.windows().stream()
                .flatMap(window -> Stream.of(0.0, Math.PI / 2).map(turn -> TileGrid.over(piece, turn, window)))
                .min(Comparator.comparingInt(g -> g.spots().size()))
                .orElseThrow();
        for (Tile.Spot spot : grid.spots()) {
            PlannedPage.Share share = grid.share(spot);
            List<Geometry> covered = new ArrayList<>();
            covered.add(OverlayNGRobust.overlay(
                            ShapePacking.moved(piece.footprint(), share.placement()),
                            JTS.toGeometry(share.window()),
                            OverlayNG.INTERSECTION)
                    .buffer(1));
            for (Tile.Side side : share.tile().joins()) {
                covered.add(JTS.toGeometry(RegisterMarks.strip(share.window(), side)));
            }
            newPage().show(share, OverlayNGRobust.union(covered));
        }
    }

    private PlannedPage newPage() {
        PlannedPage page = new PlannedPage(empty);
        pages.add(page);
        return page;
    }
}
