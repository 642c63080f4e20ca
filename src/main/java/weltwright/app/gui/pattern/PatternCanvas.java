package weltwright.app.gui.pattern;

import com.formdev.flatlaf.util.UIScale;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.ToolTipManager;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.assembly.AssemblyPlan;
import weltwright.geometry.Point;
import weltwright.output.print.LineStyle;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;

/** The pieces to cut, seen from the grain side, with their holes and marks, and what each edge is. */
final class PatternCanvas extends DrawingCanvas {
    private static final int EDGE = 16;
    private static final double RULER_MM = 50;
    private static final double REACH_MM = 4;
    private static final int ABOVE_PX = 40;
    private static final int BENEATH_PX = 52;

    /** What the letters stand for, in as few words as go beneath a drawing. */
    private static final Map<LineStyle, String> LETTERS = Map.of(
            LineStyle.EDGE_BEFORE, "finish before assembly",
            LineStyle.EDGE_SEWN, "leave until sewn",
            LineStyle.EDGE_FREE, "finish any time",
            LineStyle.EDGE_UNWORKED, "leave as cut");

    private Optional<Pattern> pattern = Optional.empty();
    private Optional<AssemblyPlan> planned = Optional.empty();
    private Map<String, EdgeAnnotations> edges = Map.of();
    private Optional<PieceRowLayout> rows = Optional.empty();
    private double aspect;
    private boolean inWork;

    PatternCanvas() {
        setName("pattern drawing");
        getAccessibleContext().setAccessibleName("Pattern");
        ToolTipManager.sharedInstance().registerComponent(this);
    }

    void show(Optional<Pattern> made, boolean another) {
        inWork = another;
        if (!pattern.equals(made)) {
            pattern = made;
            rows = Optional.empty();
            getAccessibleContext()
                    .setAccessibleDescription(pattern.map(PatternCanvas::told).orElse("No pattern yet"));
        }
        changed();
    }

    /** The edges of the pattern; those of the one before it stay until they are known. */
    void show(Optional<AssemblyPlan> plan) {
        if (plan.equals(planned)) {
            return;
        }
        planned = plan;
        edges = pattern.isEmpty() || plan.isEmpty()
                ? Map.of()
                : pattern.get().pieces().stream()
                        .collect(Collectors.toMap(
                                Piece::name, piece -> EdgeAnnotations.of(piece, plan.get()), (one, same) -> one));
        repaint();
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return rows().map(PieceRowLayout::extent);
    }

    /** Titles stand above the pieces, ruler and legend lie beneath them. */
    @Override
    protected Insets free() {
        Insets free = super.free();
        return new Insets(UIScale.scale(ABOVE_PX), free.left, UIScale.scale(BENEATH_PX), free.right);
    }

    @Override
    protected void paint(Graphics2D g, Viewport at) {
        rows().ifPresent(rows -> {
            for (PieceRowLayout.Placed placed : rows.placed()) {
                new PiecePainter(g, at, placed).piece(edges(placed.piece()));
            }
            legend(g, ruler(g, at));
        });
        if (inWork) {
            AnnotationPainter.plate(g, "drawing…", 12, 12);
        }
    }

    @Override
    public @Nullable String getToolTipText(MouseEvent e) {
        Point mm = viewport().toMm(new Point(e.getX(), e.getY()));
        return rows().stream()
                .flatMap(rows -> rows.placed().stream())
                .map(placed -> edges(placed.piece()).told(mm.minus(placed.shift()), REACH_MM))
                .flatMap(Optional::stream)
                .findFirst()
                .orElse(null);
    }

    private EdgeAnnotations edges(Piece piece) {
        return edges.getOrDefault(piece.name(), EdgeAnnotations.none());
    }

    private Optional<PieceRowLayout> rows() {
        double now = Math.max(1, getWidth()) / (double) Math.max(1, getHeight());
        if (rows.isEmpty() || now != aspect) {
            aspect = now;
            rows = pattern.map(p -> PieceRowLayout.of(p.pieces(), now));
        }
        return rows;
    }

    /** A bar of 50 mm, to get a feeling for the size. Returns the x of its right end. */
    private double ruler(Graphics2D g, Viewport at) {
        double end = EDGE + RULER_MM * at.pxPerMm();
        double y = getHeight() - EDGE;
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.pen(1.4f));
        g.draw(new Line2D.Double(EDGE, y, end, y));
        g.draw(new Line2D.Double(EDGE, y - 4, EDGE, y + 4));
        g.draw(new Line2D.Double(end, y - 4, end, y + 4));
        g.drawString("50 mm", EDGE + 4, (float) y - 6);
        return end;
    }

    /** What the letters mean, those that are seen; from the right, as many as find room. */
    private void legend(Graphics2D g, double fromX) {
        List<LineStyle> seen = edges.values().stream()
                .flatMap(marks -> marks.letters().stream())
                .map(EdgeAnnotations.Letter::style)
                .distinct()
                .sorted()
                .toList();
        FontMetrics metrics = g.getFontMetrics();
        double x = getWidth() - EDGE;
        double y = getHeight() - EDGE;
        for (int i = seen.size() - 1; i >= 0; i--) {
            String words = LETTERS.get(seen.get(i));
            double left = x - metrics.stringWidth(words);
            if (left - 2 * EDGE < fromX) {
                return;
            }
            g.setColor(ThemeColors.text());
            g.drawString(words, (float) left, (float) (y + metrics.getAscent() / 2.0 - 2));
            PiecePainter.ring(g, seen.get(i).letter(), new Point(left - 14, y));
            x = left - 14 - 2 * EDGE;
        }
    }

    private static String told(Pattern pattern) {
        StringBuilder told = new StringBuilder();
        pattern.pieces()
                .forEach(p ->
                        told.append(p.name()).append(", cut ").append(p.count()).append(". "));
        return told.toString().strip();
    }
}
