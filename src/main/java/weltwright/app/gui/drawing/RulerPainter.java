package weltwright.app.gui.drawing;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import javax.swing.UIManager;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.units.LengthUnit;
import weltwright.units.MeasureUnit;

/** Paints rulers along the upper and the left side of a canvas, with a pointer at the mouse. Sizes chosen by eye. */
final class RulerPainter {
    private static final int WIDTH_PX = 18;
    private static final double LEAST_STEP_PX = 64;
    private static final double LEAST_TICK_PX = 5;
    private static final float FONT_SCALE = 0.9f;

    /** Divisions of an inch that are labelled; longer steps are round numbers of inches. */
    private static final double[] INCH_STEPS = {1 / 16.0, 1 / 8.0, 1 / 4.0, 1 / 2.0, 1};

    private final Graphics2D g;
    private final Viewport viewport;
    private final MeasureUnit unit;
    private final double stepMm;
    private final int ticks;

    RulerPainter(Graphics2D g, Viewport viewport, MeasureUnit unit) {
        this.g = g;
        this.viewport = viewport;
        this.unit = unit;
        stepMm = stepMm(viewport.pxPerMm(), unit);
        ticks = ticks(stepMm, unit, viewport.pxPerMm());
    }

    static int widthPx() {
        return UIScale.scale(WIDTH_PX);
    }

    /** Returns the distance of the labelled marks in mm. */
    static double stepMm(double pxPerMm, MeasureUnit unit) {
        double leastMm = UIScale.scale((float) LEAST_STEP_PX) / pxPerMm;
        if (unit == MeasureUnit.MILLIMETRE) {
            return RoundSteps.atLeast(leastMm);
        }
        double inchMm = LengthUnit.INCH.inMm();
        for (double step : INCH_STEPS) {
            if (step * inchMm >= leastMm) {
                return step * inchMm;
            }
        }
        return RoundSteps.atLeast(leastMm / inchMm) * inchMm;
    }

    /** Returns into how many parts a step is divided by ticks without label: 10, 5, 4, 2 or 1. */
    private static int ticks(double stepMm, MeasureUnit unit, double pxPerMm) {
        int[] divisions = unit == MeasureUnit.MILLIMETRE ? new int[] {10, 5, 2} : new int[] {8, 4, 2};
        for (int parts : divisions) {
            if (stepMm * pxPerMm / parts >= UIScale.scale((float) LEAST_TICK_PX)) {
                return parts;
            }
        }
        return 1;
    }

    /** @param mousePx where the mouse is; empty where it is outside */
    void paint(Optional<Point> mousePx) {
        double width = widthPx();
        Font font = UIManager.getFont("small.font");
        g.setFont(font.deriveFont(font.getSize2D() * FONT_SCALE));
        Color ground = ThemeColors.canvas();
        g.setColor(ground);
        g.fill(new Rectangle2D.Double(0, 0, viewport.widthPx(), width));
        g.fill(new Rectangle2D.Double(0, 0, width, viewport.heightPx()));
        g.setColor(ThemeColors.secondaryText());
        g.setStroke(AnnotationPainter.roundStroke(1));
        g.draw(new Line2D.Double(0, width, viewport.widthPx(), width));
        g.draw(new Line2D.Double(width, 0, width, viewport.heightPx()));
        AffineTransform across = g.getTransform();
        paintScale(
                viewport.toMm(new Point(width, 0)).x(),
                viewport.toMm(new Point(viewport.widthPx(), 0)).x(),
                false);
        g.rotate(-Math.PI / 2);
        paintScale(
                viewport.toMm(new Point(0, viewport.heightPx())).y(),
                viewport.toMm(new Point(0, width)).y(),
                true);
        g.setTransform(across);
        g.setColor(UIManager.getColor("Component.accentColor"));
        mousePx.ifPresent(mouse -> {
            g.draw(new Line2D.Double(mouse.x(), 0, mouse.x(), width));
            g.draw(new Line2D.Double(0, mouse.y(), width, mouse.y()));
        });
    }

    /** Paints the marks of one ruler; the upright one in a frame turned by a quarter, in which y is counted upwards. */
    private void paintScale(double fromMm, double toMm, boolean upright) {
        double width = widthPx();
        FontMetrics metrics = g.getFontMetrics();
        double tickMm = stepMm / ticks;
        for (long i = (long) Math.ceil(fromMm / tickMm); i * tickMm <= toMm; i++) {
            double mm = i * tickMm;
            double at = upright
                    ? -viewport.toPx(new Point(0, mm)).y()
                    : viewport.toPx(new Point(mm, 0)).x();
            boolean labelled = i % ticks == 0;
            g.setColor(ThemeColors.secondaryText());
            g.draw(new Line2D.Double(at, width, at, labelled ? 0 : width * 0.7));
            if (labelled) {
                g.drawString(label(mm), (float) at + 2, metrics.getAscent());
            }
        }
    }

    private String label(double mm) {
        return unit == MeasureUnit.MILLIMETRE ? RoundSteps.format(mm, stepMm) : unit.figures(mm, 1);
    }
}
