package weltwright.app.gui.knife;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import weltwright.app.gui.assembled.SheathSectionPainter;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.job.Job;
import weltwright.knife.Grind;
import weltwright.knife.HandleSection;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.trace.capture.TraceSettings;

/**
 * Paints the job's knife cut across, by each grind and each section of the handle, edge down; before it has an outline,
 * a knife of usual size. Called off the event thread.
 */
final class SectionPictures {
    /** The blade is drawn so much thicker than it is, as its grind could not be seen else. Chosen by eye. */
    private static final double BLADE_STRETCH = 2.5;

    /** Where the blade is cut, as a share of its length from the heel. */
    private static final double BLADE_PLACE = 0.25;

    private static final int MARGIN_PX = 10;
    private static final float[] DASHES = {7, 5};

    private static final Silhouette USUAL = new Silhouette(
            Outline.polygon(List.of(
                    new Point(-110, -14),
                    new Point(0, -14),
                    new Point(110, 12),
                    new Point(80, 14),
                    new Point(-110, 14))),
            new Landmarks(new Point(110, 12), new Point(0, -14), new Point(0, 14), new Point(-110, 0)),
            true);

    private SectionPictures() {}

    /** Returns the knife to paint. */
    static Optional<Knife> knife(Job job) {
        TraceSettings settings = job.settings().assumingUsual();
        return Optional.of(job.silhouette()
                .orElse(USUAL)
                .knife(settings.measuredSpineMm(), settings.measuredHandleMm(), job.shaping(), settings.thickness()));
    }

    static void paintGrind(Graphics2D g, Knife knife, Grind.Kind kind, int sizePx) {
        Knife ground = knife.withShaping(
                knife.shaping().withGrind(knife.shaping().grind().with(kind)));
        double x = ground.landmarks().heel().x() + BLADE_PLACE * ground.bladeLengthMm();
        List<Point> section = upright(ground, x, BLADE_STRETCH);
        new SheathSectionPainter(g, fitted(section, sizePx)).paintKnife(section);
    }

    /** Paints the section; where it is not told, the roundest and the most square as dashed lines. */
    static void paintHandle(Graphics2D g, Knife knife, HandleSection section, int sizePx) {
        if (section != HandleSection.UNKNOWN) {
            List<Point> boundary = handle(knife, section);
            new SheathSectionPainter(g, fitted(boundary, sizePx)).paintKnife(boundary);
            return;
        }
        g.setColor(ThemeColors.knifeLine());
        g.setStroke(new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
        Stream.of(HandleSection.ROUND, HandleSection.SLAB)
                .map(each -> handle(knife, each))
                .forEach(boundary -> g.draw(fitted(boundary, sizePx)
                        .transform()
                        .createTransformedShape(AnnotationPainter.path(Polyline.closed(boundary)))));
    }

    private static List<Point> handle(Knife knife, HandleSection section) {
        Knife shaped = knife.withShaping(knife.shaping().withHandleExponent(section.exponent()));
        Landmarks at = shaped.landmarks();
        return upright(shaped, (at.heel().x() + at.butt().x()) / 2, 1);
    }

    /** Returns a section with the edge down. */
    private static List<Point> upright(Knife knife, double xMm, double stretch) {
        return knife.sectionAt(xMm).boundary().stream()
                .map(p -> new Point(-stretch * p.y(), p.x()))
                .toList();
    }

    private static Viewport fitted(List<Point> boundary, int sizePx) {
        Rectangle2D box = AnnotationPainter.path(Polyline.closed(boundary)).getBounds2D();
        return Viewport.fit(box, sizePx, sizePx, new Insets(MARGIN_PX, MARGIN_PX, MARGIN_PX, MARGIN_PX));
    }
}
