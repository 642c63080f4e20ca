package weltwright.sheath;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import weltwright.geometry.Node;
import weltwright.geometry.Outline;
import weltwright.geometry.Point;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.Shaping;

/**
 * How long a pattern takes, warm, for a knife of 300 mm; to be run by hand, for a time is no test. The time is the
 * processor's, so that it is the same on a busy machine. Prints the median and the
 * 95th percentile of each kind of sheath, with a setting changed each time.
 */
public final class PatternSpeed {
    private static final ThreadMXBean THREAD = ManagementFactory.getThreadMXBean();
    private static final int WARM_UP = 150;
    private static final int MEASURED = 200;

    private PatternSpeed() {}

    public static void main(String[] args) {
        Knife knife = longKnife();
        for (SheathKind kind : SheathKind.values()) {
            for (double depth : new double[] {0, 60}) {
                double[] ms = new double[MEASURED];
                int holes = 0;
                for (int i = -WARM_UP; i < MEASURED; i++) {
                    SheathSpec spec = SheathSpec.standard(kind)
                            .withHandleDepthMm(depth)
                            .withEaseMm(0.5 + 0.5 * (i + WARM_UP) / (WARM_UP + MEASURED));
                    long start = THREAD.getCurrentThreadCpuTime();
                    holes += PatternMaker.make(knife, spec).pieces().get(0).holes().size();
                    if (i >= 0) {
                        ms[i] = (THREAD.getCurrentThreadCpuTime() - start) / 1e6;
                    }
                }
                Arrays.sort(ms);
                System.out.printf(
                        Locale.ROOT, "%-18s handle %2.0f mm: median %5.1f ms, 95 %% within %5.1f ms (%d holes)%n", kind,
                        depth, ms[MEASURED / 2], ms[MEASURED * 95 / 100], holes / (WARM_UP + MEASURED));
            }
        }
    }

    private static Knife longKnife() {
        Point heel = new Point(0, -14);
        Point spineStart = new Point(0, 13);
        Point tip = new Point(170, -1);
        Point butt = new Point(-130, 0);
        Outline outline = new Outline(List.of(
                new Node(butt, true), smooth(-118, -13), smooth(-60, -12), smooth(-15, -13), new Node(heel, true),
                smooth(60, -15.5), smooth(130, -11), new Node(tip, true), smooth(130, 8), smooth(60, 13.5),
                new Node(spineStart, true), smooth(-60, 11), smooth(-118, 11)));
        return new Knife(
                outline, new Landmarks(tip, heel, spineStart, butt), 4, 22, Shaping.usual(0.4));
    }

    private static Node smooth(double x, double y) {
        return new Node(new Point(x, y), false);
    }
}
