package weltwright.output.print;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.output.PageFrame;
import weltwright.output.PageHeading;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.PageBlock;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.units.PrintScale;

/** What goes where on one page; filled while the pages are planned, and then drawn. */
final class PlannedPage {
    private final PageFrame frame;
    private final List<PlacedPiece> pieces = new ArrayList<>();
    private final List<PlacedBlock> blocks = new ArrayList<>();
    private Optional<PlacedTile> tile = Optional.empty();
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
        copy.tile = tile;
        copy.free = free;
        return copy;
    }

    /** A whole piece on the page. */
    record PlacedPiece(PrintedDrawing drawing, RigidMotion placement) {}

    record PlacedBlock(PageBlock block, Point upperLeft) {}

    /**
     * A part of a piece, shown in a rectangle of the page.
     *
     * @param labels those of the piece that go on this page, in its frame
     */
    record PlacedTile(PrintedDrawing drawing, List<Label> labels, RigidMotion placement, Envelope window, Tile tile) {}

    void place(PrintedDrawing drawing, RigidMotion placement, Geometry covered) {
        pieces.add(new PlacedPiece(drawing, placement));
        occupy(covered);
    }

    void place(PageBlock block, Point upperLeft, Geometry covered) {
        blocks.add(new PlacedBlock(block, upperLeft));
        occupy(covered);
    }

    void show(PlacedTile part, Geometry covered) {
        tile = Optional.of(part);
        occupy(covered);
    }

    private void occupy(Geometry covered) {
        free = OverlayNGRobust.overlay(free, covered, OverlayNG.DIFFERENCE);
    }

    PageFrame frame() {
        return frame;
    }

    List<PlacedPiece> pieces() {
        return pieces;
    }

    List<PlacedBlock> blocks() {
        return blocks;
    }

    Optional<PlacedTile> tile() {
        return tile;
    }

    /** Where nothing is yet. */
    Geometry free() {
        return free;
    }

    /**
     * Draws it as the next page of a document.
     *
     * @param number from 1
     * @param of how many pages
     */
    void draw(PDDocument document, PdfTypeface typeface, int number, int of, PageHeading heading, PrintScale scale)
            throws IOException {
        try (PdfCanvas canvas = PdfCanvas.onNewPage(document, typeface, frame.widthMm(), frame.heightMm(), scale)) {
            new CheckSquare(canvas, frame).draw(this, number, of, heading, scale);
            new Rulers(canvas).draw(frame);
            for (PlacedPiece placed : pieces) {
                placed.drawing().draw(canvas, placed.placement());
                for (Label label : placed.drawing().labels()) {
                    label.placed(placed.placement()).draw(canvas);
                }
            }
            if (tile.isPresent()) {
                draw(canvas, tile.get());
            }
            for (PlacedBlock placed : blocks) {
                placed.block().draw(canvas, placed.upperLeft());
            }
        }
    }

    private static void draw(PdfCanvas canvas, PlacedTile tile) throws IOException {
        Envelope window = tile.window();
        RigidMotion placement = tile.placement();
        canvas.clip(new Point(window.getMinX(), window.getMinY()), new Point(window.getMaxX(), window.getMaxY()));
        tile.drawing().draw(canvas, placement);
        for (Label label : tile.labels()) {
            label.draw(canvas);
        }
        RegisterMarks.draw(canvas, tile);
        canvas.unclip();
    }
}
