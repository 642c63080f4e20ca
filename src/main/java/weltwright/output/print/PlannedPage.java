package weltwright.output.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.output.PageFrame;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.PageBlock;

/** What goes where on one page; filled while the pages are planned, and only read after. */
final class PlannedPage {
    private final PageFrame frame;
    private final List<Laid> pieces = new ArrayList<>();
    private final List<LaidBlock> blocks = new ArrayList<>();
    private Optional<Share> share = Optional.empty();
    private Geometry free;

    PlannedPage(PageFrame frame) {
        this.frame = frame;
        this.free = frame.free();
    }

    /** A page with the same on it, to try what else it has room for. */
    PlannedPage copy() {
        PlannedPage copy = new PlannedPage(frame);
        copy.pieces.addAll(pieces);
        copy.blocks.addAll(blocks);
        copy.share = share;
        copy.free = free;
        return copy;
    }

    /** A whole piece on the page. */
    record Laid(PieceDrawing drawing, RigidMotion placement) {}

    record LaidBlock(PageBlock block, Point upperLeft) {}

    /**
     * A part of a piece, shown in a rectangle of the page.
     *
     * @param labels those of the piece's words that go on this page, in its frame
     */
    record Share(PieceDrawing drawing, List<Label> labels, RigidMotion placement, Envelope window, Tile tile) {}

    void lay(PieceDrawing drawing, RigidMotion placement, Geometry covered) {
        pieces.add(new Laid(drawing, placement));
        take(covered);
    }

    void lay(PageBlock block, Point upperLeft, Geometry covered) {
        blocks.add(new LaidBlock(block, upperLeft));
        take(covered);
    }

    void show(Share part, Geometry covered) {
        share = Optional.of(part);
        take(covered);
    }

    private void take(Geometry covered) {
        free = OverlayNGRobust.overlay(free, covered, OverlayNG.DIFFERENCE);
    }

    PageFrame frame() {
        return frame;
    }

    List<Laid> pieces() {
        return pieces;
    }

    List<LaidBlock> blocks() {
        return blocks;
    }

    Optional<Share> share() {
        return share;
    }

    /** Where nothing is yet. */
    Geometry free() {
        return free;
    }
}
