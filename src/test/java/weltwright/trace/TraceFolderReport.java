package weltwright.trace;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import javax.imageio.ImageIO;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Traces all photos of a folder with known truth and prints how far each trace is off. To be run by hand:
 * {@code TraceFolderReport PHOTOS [PICTURES]}; with a second folder it draws each trace (red) and the truth (green) on
 * its photo there. The program is told what {@link GroundTruthPhoto#trace} tells it.
 */
public final class TraceFolderReport {
    private static final int MARGIN_PX = 60;

    private TraceFolderReport() {}

    private record Line(
            double p95, double most, double tip, double heel, double claim, double covered, boolean spineRight) {}

    public static void main(String[] args) throws IOException {
        System.out.println("photo                 p95   max   tip    heel   length claim  x     inside marked  ms");
        List<Line> lines = new ArrayList<>();
        int refused = 0;
        for (GroundTruthPhoto photo : GroundTruthPhoto.in(Path.of(args[0]))) {
            long start = System.nanoTime();
            TraceOutcome outcome = TraceOutcome.of(photo);
            long ms = (System.nanoTime() - start) / 1_000_000;
            if (outcome.found().isEmpty()) {
                refused++;
                System.out.printf(Locale.ROOT, "%-20s refused: %s%n", photo.name(), outcome.refusal());
                continue;
            }
            TraceOutcome.Found found = outcome.found().get();
            Line line = line(photo, found);
            lines.add(line);
            System.out.printf(
                    Locale.ROOT,
                    "%-20s %5.2f %5.2f %5.2f %+6.2f %+6.2f %5.2f %5.2f %5.0f%% %5.0f %5d%s%n",
                    photo.name(),
                    line.p95,
                    line.most,
                    line.tip,
                    line.heel,
                    found.bladeLengthMm(),
                    line.claim,
                    line.p95 / line.claim,
                    100 * line.covered,
                    found.markedMm(),
                    ms,
                    line.spineRight ? "" : found.asksForEdge() ? " asks for the edge" : " EDGE WRONG");
            if (args.length > 1) {
                draw(photo, found, Path.of(args[1]));
            }
        }
        System.out.printf(Locale.ROOT, "%d traced, %d refused%n", lines.size(), refused);
        print("95th percentile", lines, Line::p95);
        print("greatest", lines, Line::most);
        print("tip", lines, Line::tip);
        print("heel", lines, line -> Math.abs(line.heel));
        print("over claim", lines, line -> line.p95 / line.claim);
        System.out.printf(
                Locale.ROOT,
                "inside the claim %.1f %%%n",
                100 * lines.stream().mapToDouble(Line::covered).average().orElse(0));
    }

    private static Line line(GroundTruthPhoto photo, TraceOutcome.Found found) {
        Point tip = found.reading()
                .fit()
                .apply(found.trace().silhouette().landmarks().tip());
        Point heel = found.reading()
                .fit()
                .apply(found.trace().silhouette().landmarks().heel());
        Point trueTip = photo.outline().points().stream()
                .max((a, b) -> Double.compare(a.x(), b.x()))
                .orElseThrow();
        return new Line(
                found.reading().p95Mm(),
                found.reading().greatestMm(),
                tip.distance(trueTip),
                heel.x(),
                found.claimedMm(),
                found.covered(),
                !found.edgeWrong() && found.spineRight());
    }

    private static void print(String what, List<Line> lines, ToDoubleFunction<Line> of) {
        double[] sorted = lines.stream().mapToDouble(of).sorted().toArray();
        if (sorted.length > 0) {
            System.out.printf(
                    Locale.ROOT,
                    "%-16s median %.2f, nine of ten %.2f, worst %.2f%n",
                    what,
                    sorted[sorted.length / 2],
                    sorted[Math.max(0, (int) Math.ceil(0.9 * sorted.length) - 1)],
                    sorted[sorted.length - 1]);
        }
    }

    private static void draw(GroundTruthPhoto photo, TraceOutcome.Found found, Path folder) throws IOException {
        BufferedImage image = ImageIO.read(photo.picture().toFile());
        Trace trace = found.trace();
        Polyline traced = trace.silhouette()
                .outline()
                .sampled(0.2)
                .map(p -> trace.view()
                        .pixel(trace.midPlane().pointAbove(trace.onGround().apply(p))));
        List<Point> truth = photo.pixels("knife_outline");
        var xs = truth.stream().mapToDouble(Point::x).summaryStatistics();
        var ys = truth.stream().mapToDouble(Point::y).summaryStatistics();
        int left = (int) Math.max(0, xs.getMin() - MARGIN_PX);
        int top = (int) Math.max(0, ys.getMin() - MARGIN_PX);
        int right = (int) Math.min(image.getWidth(), xs.getMax() + MARGIN_PX);
        int bottom = (int) Math.min(image.getHeight(), ys.getMax() + MARGIN_PX);
        BufferedImage cut = new BufferedImage(2 * (right - left), 2 * (bottom - top), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = cut.createGraphics();
        g.scale(2, 2);
        g.translate(-left, -top);
        g.drawImage(image, 0, 0, null);
        g.translate(0.5, 0.5);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setStroke(new BasicStroke(0.5f));
        g.setColor(Color.GREEN);
        g.draw(path(truth));
        g.setColor(Color.RED);
        g.draw(path(traced.points()));
        g.dispose();
        Files.createDirectories(folder);
        ImageIO.write(cut, "png", folder.resolve(photo.name() + ".png").toFile());
    }

    private static Path2D path(List<Point> points) {
        Path2D path = new Path2D.Double();
        path.moveTo(points.get(0).x(), points.get(0).y());
        points.forEach(p -> path.lineTo(p.x(), p.y()));
        path.closePath();
        return path;
    }
}
