package weltwright.app.gui.pattern;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.event.MouseEvent;
import java.awt.geom.Ellipse2D;
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
import weltwright.geometry.Polyline;
import weltwright.message.Messages;
import weltwright.output.print.LineStyle;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.units.LengthUnit;
import weltwright.units.MeasureUnit;

/** Shows the pieces to cut from the grain side, with their holes, marks and edge annotations. */
final class PatternCanvas extends DrawingCanvas {
    private static final Messages TEXTS = Messages.of(PatternCanvas.class);

    private static final int MARGIN_PX = 16;
    // Chosen by eye.
    private static final double RULER_MM = 50;
    private static final double RULER_IN = 2;
    private static final double TOOL_TIP_DISTANCE_MM = 4;
    /** Room for the scale bar beside the legend. */
    private static final int SCALE_BAR_PX = 120;

    private static final int LEGEND_HEIGHT_PX = 52;

    /** From the middle of a letter to its meaning. */
    private static final int LETTER_PX = 14;

    private static final double AROUND_MARK_MM = 25;
    private static final float MARK_RADIUS_PX = 7;

    /** Short meanings of the letters, for the legend beneath the drawing. */
    private static final Map<LineStyle, String> MEANINGS = Map.of(
            LineStyle.EDGE_BEFORE, TEXTS.text("pattern-canvas.finish-before-assembly"),
            LineStyle.EDGE_SEWN, TEXTS.text("pattern-canvas.leave-until-sewn"),
            LineStyle.EDGE_FREE, TEXTS.text("pattern-canvas.finish-any-time"),
            LineStyle.EDGE_UNWORKED, TEXTS.text("pattern-canvas.leave-as-cut"));

    private Optional<Pattern> pattern = Optional.empty();
    private Optional<AdvicePlace.Holes> marked = Optional.empty();
    private Optional<AssemblyPlan> plan = Optional.empty();
    private Map<String, EdgeAnnotations> annotations = Map.of();
    private Optional<PieceRowLayout> rowLayout = Optional.empty();
    private Dimension view = new Dimension();
    private boolean computing;
    private MeasureUnit unit = MeasureUnit.MILLIMETRE;

    PatternCanvas() {
        setName("pattern drawing");
        getAccessibleContext().setAccessibleName(TEXTS.text("pattern-canvas.pattern"));
        ToolTipManager.sharedInstance().registerComponent(this);
    }

    /** Marks the holes of a place, and zooms to them with the pieces around. */
    void mark(AdvicePlace.Holes holes) {
        marked = Optional.of(holes);
        List<Point> places = markedPlaces();
        if (!places.isEmpty()) {
            Rectangle2D box = AnnotationPainter.path(Polyline.open(places)).getBounds2D();
            zoomTo(new Rectangle2D.Double(
                    box.getX() - AROUND_MARK_MM,
                    box.getY() - AROUND_MARK_MM,
                    box.getWidth() + 2 * AROUND_MARK_MM,
                    box.getHeight() + 2 * AROUND_MARK_MM));
        }
    }

    /** Returns the marked holes in the drawing. */
    List<Point> markedPlaces() {
        return rowLayout().stream()
                .flatMap(pieces -> pieces.placed().stream())
                .flatMap(placed -> marked.stream()
                        .flatMap(holes -> holes.layers().stream())
                        .filter(layer -> layer.piece().equals(placed.piece().name()))
                        .flatMap(layer -> layer.holes().stream())
                        .map(hole -> hole.plus(placed.shift())))
                .toList();
    }

    private void paintMarked(Graphics2D g, Viewport viewport) {
        double r = UIScale.scale(MARK_RADIUS_PX);
        for (Point place : markedPlaces()) {
            Point px = viewport.toPx(place);
            AnnotationPainter.paintWithHalo(
                    g, new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r), 2, ThemeColors.uncertainOverlay());
        }
    }

    void setPattern(Optional<Pattern> newPattern, boolean newComputing) {
        computing = newComputing;
        if (!pattern.equals(newPattern)) {
            pattern = newPattern;
            marked = Optional.empty();
            rowLayout = Optional.empty();
            getAccessibleContext()
                    .setAccessibleDescription(
                            pattern.map(PatternCanvas::describe).orElse(TEXTS.text("pattern-canvas.no-pattern-yet")));
        }
        contentChanged();
    }

    /** Sets the plan with the edges of the pattern; the annotations before stay until then. */
    void setPlan(Optional<AssemblyPlan> newPlan) {
        if (newPlan.equals(plan)) {
            return;
        }
        plan = newPlan;
        annotations = pattern.isEmpty() || newPlan.isEmpty()
                ? Map.of()
                : pattern.get().pieces().stream()
                        .collect(Collectors.toMap(
                                Piece::name, piece -> EdgeAnnotations.of(piece, newPlan.get()), (one, same) -> one));
        repaint();
    }

    @Override
    protected Optional<MeasureUnit> rulerUnit() {
        return Optional.of(unit);
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return rowLayout().map(PieceRowLayout::extent);
    }

    /** Leaves room for scale bar and legend beneath the pieces. */
    @Override
    protected Insets margins() {
        Insets free = super.margins();
        FontMetrics metrics = getFontMetrics(getFont());
        double width = legend().stream()
                .mapToDouble(style -> legendItemPx(style, metrics))
                .sum();
        int rows = width > getWidth() - rulerPx() - UIScale.scale(SCALE_BAR_PX) ? 2 : 1;
        int height = UIScale.scale(LEGEND_HEIGHT_PX) + (rows - 1) * legendRowPx();
        return new Insets(free.top, free.left, height, free.right);
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        rowLayout().ifPresent(pieces -> {
            for (PieceRowLayout.Placed placed : pieces.placed()) {
                PiecePainter painter = new PiecePainter(g, viewport, placed, unit);
                painter.paintPiece(annotationsOf(placed.piece()));
                painter.paintCaption();
            }
            paintMarked(g, viewport);
            paintLegend(g, paintScaleBar(g, viewport));
        });
        if (computing) {
            AnnotationPainter.paintLabel(g, TEXTS.text("pattern-canvas.drawing"), rulerPx() + 12.0, rulerPx() + 12.0);
        } else if (rowLayout().isEmpty()) {
            AnnotationPainter.paintPlaceholder(
                    g, Messages.of(PatternCanvas.class).text("canvas.waits"), getWidth(), getHeight());
        }
    }

    @Override
    public @Nullable String getToolTipText(MouseEvent e) {
        Point mm = viewport().toMm(new Point(e.getX(), e.getY()));
        return rowLayout().stream()
                .flatMap(pieces -> pieces.placed().stream())
                .map(placed ->
                        annotationsOf(placed.piece()).describeEdgeAt(mm.minus(placed.shift()), TOOL_TIP_DISTANCE_MM))
                .flatMap(Optional::stream)
                .findFirst()
                .orElse(null);
    }

    private EdgeAnnotations annotationsOf(Piece piece) {
        return annotations.getOrDefault(piece.name(), EdgeAnnotations.none());
    }

    private Optional<PieceRowLayout> rowLayout() {
        Insets margins = margins();
        Dimension newView = new Dimension(
                Math.max(1, getWidth() - margins.left - margins.right),
                Math.max(1, getHeight() - margins.top - margins.bottom));
        if (rowLayout.isEmpty() || !newView.equals(view)) {
            view = newView;
            rowLayout = pattern.map(
                    p -> PieceRowLayout.of(p.pieces(), newView, piece -> PiecePainter.captionPx(this, piece, unit)));
        }
        return rowLayout;
    }

    void setUnit(MeasureUnit newUnit) {
        if (newUnit == unit) {
            return;
        }
        unit = newUnit;
        rowLayout = Optional.empty(); // captions have lengths
        contentChanged();
    }

    /** Paints a scale bar of 50 mm or 2 in and returns x in px of the right end of bar and length. */
    private double paintScaleBar(Graphics2D g, Viewport viewport) {
        double lengthMm = unit == MeasureUnit.INCH ? RULER_IN * LengthUnit.INCH.inMm() : RULER_MM;
        double from = rulerPx() + UIScale.scale(MARGIN_PX);
        double end = from + lengthMm * viewport.pxPerMm();
        double y = getHeight() - UIScale.scale(MARGIN_PX);
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.roundStroke(1.4f));
        g.draw(new Line2D.Double(from, y, end, y));
        g.draw(new Line2D.Double(from, y - 4, from, y + 4));
        g.draw(new Line2D.Double(end, y - 4, end, y + 4));
        String length = unit.format(lengthMm);
        g.drawString(length, (float) from + 4, (float) y - 6);
        return Math.max(end, from + 4 + g.getFontMetrics().stringWidth(length));
    }

    /** Returns the styles of edge whose letters stand in the drawing. */
    private List<LineStyle> legend() {
        return annotations.values().stream()
                .flatMap(piece -> piece.letters().stream())
                .map(EdgeAnnotations.Letter::style)
                .distinct()
                .sorted()
                .toList();
    }

    /** Returns the width of a letter with its meaning and the space around them. */
    private static double legendItemPx(LineStyle style, FontMetrics metrics) {
        return metrics.stringWidth(MEANINGS.get(style)) + UIScale.scale(LETTER_PX) + 2.0 * UIScale.scale(MARGIN_PX);
    }

    private static int legendRowPx() {
        return 2 * UIScale.scale(LETTER_PX);
    }

    /**
     * Paints the meanings of the letters in the drawing from right to left, those that do not fit right of
     * {@code fromX} in a row above.
     */
    private void paintLegend(Graphics2D g, double fromX) {
        List<LineStyle> styles = legend();
        FontMetrics metrics = g.getFontMetrics();
        int margin = UIScale.scale(MARGIN_PX);
        int radius = UIScale.scale(LETTER_PX);
        double x = getWidth() - margin;
        double y = getHeight() - margin;
        boolean above = false;
        for (int i = styles.size() - 1; i >= 0; i--) {
            String text = MEANINGS.get(styles.get(i));
            double left = x - metrics.stringWidth(text);
            if (!above && left - 2 * margin < fromX) {
                above = true;
                left += getWidth() - margin - x;
                y -= legendRowPx();
            }
            g.setColor(ThemeColors.text());
            g.drawString(text, (float) left, (float) (y + metrics.getAscent() / 2.0 - 2));
            PiecePainter.paintRingedLetter(g, styles.get(i).letter(), new Point(left - radius, y));
            x = left - radius - 2 * margin;
        }
    }

    private static String describe(Pattern pattern) {
        StringBuilder description = new StringBuilder();
        pattern.pieces()
                .forEach(p -> description
                        .append(p.name())
                        .append(TEXTS.text("pattern-canvas.cut"))
                        .append(p.count())
                        .append(". "));
        return description.toString().strip();
    }
}
