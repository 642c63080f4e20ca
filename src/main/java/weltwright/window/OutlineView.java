package weltwright.window;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.linearref.LengthIndexedLine;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Silhouette;

/**
 * The outline over the photo, with the four landmarks to be pulled where they belong: with the mouse, or by their
 * letter and then the arrow keys. On demand the outline itself can be pulled, node by node.
 */
final class OutlineView extends Drawing {
    private static final double OUTLINE_STEP_MM = 0.25;
    private static final double NUDGE_MM = 0.2;
    private static final double FAR_NUDGE_MM = 2;
    private static final Color EDGE = new Color(0xff4d3d);
    private static final Color SPINE = new Color(0x2ad1ff);
    private static final Color HANDLE = new Color(0xffc933);
    private static final Color HALO = new Color(0, 0, 0, 150);

    private final Bench bench;
    private Optional<Picture> picture = Optional.empty();
    private Optional<Silhouette> pulled = Optional.empty();
    private Optional<Grip> held = Optional.empty();
    private boolean nodesLoose;

    OutlineView(Bench bench) {
        this.bench = bench;
        setName("outline drawing");
        getAccessibleContext().setAccessibleName("Outline over the photo");
        getAccessibleContext().setAccessibleDescription(
                "T, H, S or B takes hold of tip, heel, spine or butt; the arrow keys then move it along the outline.");
        for (Place place : Place.values()) {
            onKey("pressed " + place.key(), () -> hold(place));
        }
        onKey("LEFT", () -> nudge(NUDGE_MM));
        onKey("RIGHT", () -> nudge(-NUDGE_MM));
        onKey("shift LEFT", () -> nudge(FAR_NUDGE_MM));
        onKey("shift RIGHT", () -> nudge(-FAR_NUDGE_MM));
        bench.watch(() -> {
            pulled = Optional.empty();
            changed();
        });
    }

    /** Whether the outline itself can be pulled, by its nodes, and not the landmarks alone. */
    void loosenNodes(boolean loose) {
        nodesLoose = loose;
        repaint();
    }

    void show(Optional<Picture> under) {
        picture = under;
        changed();
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return picture.map(Picture::extent)
                .or(() -> silhouette().map(s -> path(s.outline().sampled(1)).getBounds2D()));
    }

    @Override
    protected void paint(Graphics2D g, Viewport at) {
        picture.ifPresent(p -> p.paint(g, at));
        silhouette().ifPresent(s -> paint(g, at, s));
    }

    @Override
    protected boolean grab(Point mm, double reachMm) {
        held = near(mm, reachMm);
        return held.isPresent();
    }

    @Override
    protected void drag(Point mm) {
        pulled = silhouette().flatMap(s -> held.map(grip -> grip.pulled(s, mm)));
    }

    @Override
    protected void letGo() {
        pulled.ifPresent(s -> bench.change(job -> job.withSilhouette(s)));
    }

    @Override
    protected boolean over(Point mm, double reachMm) {
        return near(mm, reachMm).isPresent();
    }

    /** The outline as it is to be drawn; none while there is only a photo that it does not lie on. */
    private Optional<Silhouette> silhouette() {
        boolean fits = picture.map(Picture::fromAbove).orElse(true);
        return fits ? pulled.or(() -> bench.job().silhouette()) : Optional.empty();
    }

    private Optional<Grip> near(Point mm, double reachMm) {
        return silhouette().flatMap(s -> nearest(s, nodesLoose ? nodes(s) : List.of(), mm, reachMm)
                .or(() -> nearest(s, List.of(Place.values()), mm, reachMm)));
    }

    private static Optional<Grip> nearest(Silhouette s, List<? extends Grip> grips, Point mm, double reachMm) {
        return grips.stream()
                .filter(grip -> grip.of(s).distance(mm) <= reachMm)
                .min(Comparator.comparingDouble(grip -> grip.of(s).distance(mm)))
                .map(grip -> (Grip) grip);
    }

    private static List<NodeGrip> nodes(Silhouette s) {
        return IntStream.range(0, s.outline().nodes().size())
                .mapToObj(NodeGrip::new)
                .toList();
    }

    private void hold(Place place) {
        held = Optional.of(place);
        repaint();
    }

    private void nudge(double mm) {
        if (held.isPresent() && held.get() instanceof Place place) {
            bench.job()
                    .silhouette()
                    .ifPresent(s -> bench.change("nudge " + place, job -> job.withSilhouette(place.nudged(s, mm))));
        }
    }

    private void paint(Graphics2D g, Viewport at, Silhouette s) {
        Polyline outline = s.outline().sampled(OUTLINE_STEP_MM);
        Shape whole = at.transform().createTransformedShape(path(outline));
        g.setStroke(Words.pen(3.6f));
        g.setColor(HALO);
        g.draw(whole);
        g.setStroke(Words.pen(1.6f));
        g.setColor(HANDLE);
        g.draw(whole);
        g.setColor(EDGE);
        g.draw(at.transform().createTransformedShape(stretch(outline, Place.HEEL.of(s), Place.TIP.of(s))));
        g.setColor(SPINE);
        g.draw(at.transform().createTransformedShape(stretch(outline, Place.SPINE.of(s), Place.TIP.of(s))));
        if (nodesLoose) {
            nodes(s).forEach(node -> paint(g, at.toPx(node.of(s)), node));
        }
        for (Place place : Place.values()) {
            paint(g, at.toPx(place.of(s)), place, place.of(s), s);
        }
        legend(g);
    }

    private void paint(Graphics2D g, Point px, NodeGrip node) {
        double r = UIScale.scale(held.equals(Optional.of(node)) ? 5f : 3.5f);
        Shape square = new Rectangle2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r);
        g.setColor(Color.WHITE);
        g.fill(square);
        g.setStroke(Words.pen(1));
        g.setColor(Color.BLACK);
        g.draw(square);
    }

    private void paint(Graphics2D g, Point px, Place place, Point mm, Silhouette s) {
        boolean taken = held.equals(Optional.of(place));
        double r = UIScale.scale(taken ? 8f : 6f);
        Shape dot = new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r);
        g.setColor(new Color(255, 255, 255, 90));
        g.fill(dot);
        g.setStroke(Words.pen(4));
        g.setColor(HALO);
        g.draw(dot);
        g.setStroke(Words.pen(2));
        g.setColor(taken ? HANDLE : Color.WHITE);
        g.draw(dot);
        boolean above = mm.y() >= middle(s);
        FontMetrics metrics = g.getFontMetrics();
        int width = metrics.stringWidth(place.words());
        double x = Math.max(4, Math.min(getWidth() - width - 14, px.x() - width / 2.0));
        Words.plate(g, place.words(), x, above ? px.y() - 14 - metrics.getHeight() : px.y() + 14);
    }

    private void legend(Graphics2D g) {
        double y = getHeight() - g.getFontMetrics().getHeight() - 14.0;
        double x = 12;
        x = Words.plate(g, "edge", x, y, EDGE) + 6;
        x = Words.plate(g, "spine", x, y, SPINE) + 6;
        x = Words.plate(g, "handle", x, y, HANDLE) + 18;
        if (bench.job().trace().isPresent()) {
            double error = bench.job().trace().get().error().error95Mm();
            Words.plate(g, "95 of 100 places within %.2f mm".formatted(error), x, y);
        }
    }

    private static double middle(Silhouette s) {
        return (Place.HEEL.of(s).y() + Place.SPINE.of(s).y()) / 2;
    }

    /** The shorter way round from one point of a closed chain to another. */
    private static Path2D stretch(Polyline outline, Point from, Point to) {
        LengthIndexedLine line = new LengthIndexedLine(outline.lineString());
        double a = line.project(from.coordinate());
        double b = line.project(to.coordinate());
        double low = Math.min(a, b);
        double high = Math.max(a, b);
        Path2D path = new Path2D.Double();
        if (high - low <= line.getEndIndex() / 2) {
            add(path, line, low, high);
        } else {
            add(path, line, high, line.getEndIndex());
            add(path, line, 0, low);
        }
        return path;
    }

    private static void add(Path2D path, LengthIndexedLine line, double from, double to) {
        var part = line.extractLine(from, to).getCoordinates();
        for (int i = 0; i < part.length; i++) {
            if (i == 0 && path.getCurrentPoint() == null) {
                path.moveTo(part[i].x, part[i].y);
            } else {
                path.lineTo(part[i].x, part[i].y);
            }
        }
    }

    private static Path2D path(Polyline line) {
        return Words.path(line);
    }
}
