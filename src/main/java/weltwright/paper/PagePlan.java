package weltwright.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;

/**
 * Shares a pattern out over pages. A piece that fits on a page is never cut; several share a page where they fit; only
 * what is larger than a page is shown in parts, each part overlapping its neighbours by {@link #OVERLAP_MM}.
 */
final class PagePlan {
    static final double OVERLAP_MM = 10;

    private static final GeometryFactory JTS = new GeometryFactory();

    private final PageFrame empty;
    private final List<PlannedPage> pages = new ArrayList<>();

    private PagePlan(PageFrame empty) {
        this.empty = empty;
    }

    /**
     * @param blocks each in the shapes that it may take, the one liked best first
     */
    static List<PlannedPage> of(PageFrame empty, List<PieceDrawing> pieces, List<List<? extends Block>> blocks) {
        PagePlan plan = new PagePlan(empty);
        pieces.stream()
                .sorted(Comparator.comparingDouble(PagePlan::size).reversed())
                .forEach(plan::add);
        blocks.forEach(plan::add);
        return List.copyOf(plan.pages);
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
        page.lay(piece, place, moved(piece.footprint(), place));
    }

    private void add(List<? extends Block> shapes) {
        for (PlannedPage page : pages) {
            for (Block block : shapes) {
                if (layIfItFits(block, page)) {
                    return;
                }
            }
        }
        PlannedPage page = newPage();
        for (Block block : shapes) {
            if (layIfItFits(block, page)) {
                return;
            }
        }
        throw new IllegalStateException("a block of words that is larger than a page");
    }

    private static boolean layIfItFits(Block block, PlannedPage page) {
        double air = 3;
        Geometry box = JTS.toGeometry(new Envelope(-air, block.widthMm() + air, -block.heightMm() - air, air));
        Optional<Placement> place = Packing.find(box, page.free(), List.of(0.0));
        place.ifPresent(p -> page.lay(block, p.shift(), moved(box, p)));
        return place.isPresent();
    }

    /** Shows the piece in parts, in the way that takes the fewest pages. */
    private void share(PieceDrawing piece) {
        Grid best = null;
        for (Envelope window : empty.windows()) {
            for (double direction : List.of(0.0, Math.PI / 2)) {
                Grid grid = Grid.over(piece, direction, window);
                if (best == null || grid.spots().size() < best.spots().size()) {
                    best = grid;
                }
            }
        }
        for (Tile.Spot spot : best.spots()) {
            Tile tile = new Tile(piece.piece().name(), spot, best.spots());
            Placement placement = best.placement(spot);
            Geometry part = moved(piece.footprint(), placement).intersection(JTS.toGeometry(best.window()));
            for (Tile.Side side : tile.joins()) {
                part = part.union(JTS.toGeometry(RegisterMarks.strip(best.window(), side)));
            }
            newPage().show(new PlannedPage.Share(piece, placement, best.window(), tile), part);
        }
    }

    private PlannedPage newPage() {
        PlannedPage page = new PlannedPage(empty);
        pages.add(page);
        return page;
    }

    private static Geometry moved(Geometry shape, Placement place) {
        return AffineTransformation.rotationInstance(place.angleRad())
                .translate(place.shift().x(), place.shift().y())
                .transform(shape);
    }

    /**
     * A piece cut into windows of one size.
     *
     * @param window where a part shows on its page
     * @param direction that the piece is turned to
     * @param upperLeft the upper left corner of the first window, in the turned piece's frame
     * @param spots those windows that have something in them
     */
    private record Grid(Envelope window, double direction, Point upperLeft, Set<Tile.Spot> spots) {

        static Grid over(PieceDrawing piece, double direction, Envelope window) {
            Geometry turned = moved(piece.footprint(), new Placement(direction, new Point(0, 0)));
            Envelope box = turned.getEnvelopeInternal();
            double stepX = window.getWidth() - OVERLAP_MM;
            double stepY = window.getHeight() - OVERLAP_MM;
            int columns = (int) Math.max(1, Math.ceil((box.getWidth() - OVERLAP_MM) / stepX));
            int rows = (int) Math.max(1, Math.ceil((box.getHeight() - OVERLAP_MM) / stepY));
            Point upperLeft = new Point(
                    box.centre().x - (columns * stepX + OVERLAP_MM) / 2,
                    box.centre().y + (rows * stepY + OVERLAP_MM) / 2);
            Set<Tile.Spot> spots = new LinkedHashSet<>();
            for (int row = 0; row < rows; row++) {
                for (int column = 0; column < columns; column++) {
                    // What lies in the overlap with the next window is that one's to show.
                    double left = upperLeft.x() + column * stepX;
                    double top = upperLeft.y() - row * stepY;
                    Envelope own = new Envelope(
                            left,
                            left + stepX + (column == columns - 1 ? OVERLAP_MM : 0),
                            top - stepY - (row == rows - 1 ? OVERLAP_MM : 0),
                            top);
                    if (turned.intersects(JTS.toGeometry(own))) {
                        spots.add(new Tile.Spot(row, column));
                    }
                }
            }
            return new Grid(window, direction, upperLeft, spots);
        }

        /** Puts the share of a spot into the window. */
        Placement placement(Tile.Spot spot) {
            Point corner = upperLeft.plus(new Point(
                    spot.column() * (window.getWidth() - OVERLAP_MM),
                    -spot.row() * (window.getHeight() - OVERLAP_MM)));
            return new Placement(direction, new Point(window.getMinX(), window.getMaxY()).minus(corner));
        }
    }
}
