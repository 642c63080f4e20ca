package weltwright.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Placement;

/**
 * Shares a pattern out over pages. A piece that fits on a page is never cut; several share a page where they fit; only
 * what is larger than a page is shown in parts, each part overlapping its neighbours by {@link TileGrid#OVERLAP_MM}.
 */
final class PagePlan {
    private static final GeometryFactory JTS = new GeometryFactory();

    private final PageFrame empty;
    private final List<PlannedPage> pages = new ArrayList<>();
    private final List<Block> left = new ArrayList<>();

    private PagePlan(PageFrame empty) {
        this.empty = empty;
    }

    /**
     * @param blocks each in the shapes that it may take, the one liked best first
     * @param wordsAlone whether a page may have words alone; else what finds no room beside a piece is left over
     */
    static PagePlan of(
            PageFrame empty, List<PieceDrawing> pieces, List<List<? extends Block>> blocks, boolean wordsAlone) {
        PagePlan plan = new PagePlan(empty);
        pieces.stream()
                .sorted(Comparator.comparingDouble(PagePlan::size).reversed())
                .forEach(plan::add);
        blocks.forEach(shapes -> plan.add(shapes, wordsAlone));
        return plan;
    }

    List<PlannedPage> pages() {
        return List.copyOf(pages);
    }

    /** The blocks that found no room, each in the shape liked best. */
    List<Block> left() {
        return List.copyOf(left);
    }

    private static double size(PieceDrawing piece) {
        Envelope box = piece.footprint().getEnvelopeInternal();
        return Math.max(box.getWidth(), box.getHeight());
    }

    private void add(PieceDrawing piece) {
        for (PlannedPage page : pages) {
            Optional<Placement> place = Packing.find(piece.footprint(), page.free(), Packing.QUARTERS);
            if (place.isPresent()) {
                lay(piece, page, place.get());
                return;
            }
        }
        Optional<Placement> alone = Packing.find(piece.footprint(), empty.free(), Packing.ALL_ROUND);
        if (alone.isPresent()) {
            lay(piece, newPage(), alone.get());
        } else {
            share(piece);
        }
    }

    private static void lay(PieceDrawing piece, PlannedPage page, Placement place) {
        page.lay(piece, place, Packing.moved(piece.footprint(), place));
    }

    private void add(List<? extends Block> shapes, boolean wordsAlone) {
        if (addBesideAPiece(shapes)) {
            return;
        }
        if (!wordsAlone) {
            left.add(shapes.get(0));
            return;
        }
        PlannedPage page = newPage();
        if (shapes.stream().noneMatch(block -> layIfItFits(block, page))) {
            throw new IllegalStateException("a block of words that is larger than a page");
        }
    }

    /** One more block, if there is room for it on the pages that are there. */
    boolean addBesideAPiece(List<? extends Block> shapes) {
        return pages.stream().anyMatch(page -> shapes.stream().anyMatch(block -> layIfItFits(block, page)));
    }

    private static boolean layIfItFits(Block block, PlannedPage page) {
        double air = 3;
        Geometry box = JTS.toGeometry(new Envelope(-air, block.widthMm() + air, -block.heightMm() - air, air));
        Optional<Placement> place = Packing.find(box, page.free(), List.of(0.0));
        place.ifPresent(p -> page.lay(block, p.shift(), Packing.moved(box, p)));
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
                            Packing.moved(piece.footprint(), share.placement()),
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
