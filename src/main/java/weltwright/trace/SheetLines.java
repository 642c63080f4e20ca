package weltwright.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.opencv.core.Mat;
import weltwright.geometry.Point;
import weltwright.ground.ReferenceSheet;
import weltwright.measure.PrintScale;

/**
 * Where along the sheet's pale blue lines the line is to be seen, and where it is hidden. A shadow darkens line and paper
 * alike and leaves the line's blueness as it was; whatever lies on the sheet hides it.
 */
final class SheetLines {
    private static final double STEP_MM = 0.6;

    /** Looked at together, so that grain averages out: this far to both sides along the line. */
    private static final double ALONG_MM = 1.2;

    /** Paper is looked at this far from the line's middle. */
    private static final double ASIDE_MM = 0.9;

    private final ReferenceSheet sheet;
    private final PrintScale scale;
    private final GroundRaster raster;
    private final byte[] bgr;

    SheetLines(ReferenceSheet sheet, PrintScale scale, GroundRaster raster, Mat seen) {
        this.sheet = sheet;
        this.scale = scale;
        this.raster = raster;
        this.bgr = new byte[3 * raster.columns() * raster.rows()];
        seen.get(0, 0, bgr);
    }

    /**
     * @param at a point of a printed line, on the sheet
     * @param visible whether the line is seen there; else something hides it
     */
    record Sight(Point at, boolean visible) {}

    private record Look(Point at, double blueness, boolean even) {}

    /** Where it can be told with confidence; points where it cannot are left out. */
    List<Sight> look() {
        List<Look> looks = new ArrayList<>();
        int frame = ReferenceSheet.FRAME_SQUARES;
        for (int column = frame + 1; column < sheet.squaresAcross() - frame; column++) {
            along(sheet.gridPoint(column, frame), sheet.gridPoint(column, sheet.squaresDown() - frame), looks);
        }
        for (int row = frame + 1; row < sheet.squaresDown() - frame; row++) {
            along(sheet.gridPoint(frame, row), sheet.gridPoint(sheet.squaresAcross() - frame, row), looks);
        }
        double[] sorted = looks.stream().mapToDouble(Look::blueness).sorted().toArray();
        double usual = sorted[(int) (0.7 * sorted.length)];
        double noise = noise(sorted, usual);
        List<Sight> sights = new ArrayList<>();
        if (usual < 4 * noise) {
            return sights;
        }
        for (Look look : looks) {
            if (look.even() && Math.abs(look.blueness() - usual) < 0.35 * usual) {
                sights.add(new Sight(look.at(), true));
            } else if (look.even() && Math.abs(look.blueness()) < 0.2 * usual) {
                sights.add(new Sight(look.at(), false));
            }
        }
        return sights;
    }

    /** Half the spread of the brighter part of the looks, which are those of bare paper. */
    private static double noise(double[] sorted, double usual) {
        double[] off = Arrays.stream(sorted).skip(sorted.length / 2).map(b -> Math.abs(b - usual)).sorted().toArray();
        return off[off.length / 2];
    }

    private void along(Point from, Point to, List<Look> looks) {
        Point a = new Point(from.x() * scale.x(), from.y() * scale.y());
        Point b = new Point(to.x() * scale.x(), to.y() * scale.y());
        double length = a.distance(b);
        Point along = b.minus(a).unit();
        Point aside = along.left().times(ASIDE_MM);
        // Ends of lines lie at the frame, crossings on other lines: looks there are spoilt.
        double crossing = sheet.squareMm() * (along.x() != 0 ? scale.x() : scale.y());
        for (double s = STEP_MM; s < length; s += STEP_MM) {
            double fromCrossing = Math.abs(s - crossing * Math.round(s / crossing));
            if (fromCrossing < ALONG_MM + 0.5) {
                continue;
            }
            Point at = a.plus(along.times(s));
            double[] middle = mean(at, along);
            double[] left = mean(at.plus(aside), along);
            double[] right = mean(at.minus(aside), along);
            double red = 2 * middle[2] / (left[2] + right[2]);
            double blue = 2 * middle[0] / (left[0] + right[0]);
            boolean even = Math.abs(left[1] - right[1]) < 0.06 * (left[1] + right[1]);
            looks.add(new Look(at, blue - red, even));
        }
    }

    private double[] mean(Point at, Point along) {
        double[] sum = new double[3];
        int count = 0;
        for (double s = -ALONG_MM; s <= ALONG_MM + 1e-9; s += raster.mmPerPx()) {
            Point px = raster.pixel(at.plus(along.times(s)));
            int x = (int) Math.floor(px.x());
            int y = (int) Math.floor(px.y());
            double fx = px.x() - x;
            double fy = px.y() - y;
            for (int k = 0; k < 3; k++) {
                sum[k] += (1 - fy) * ((1 - fx) * level(x, y, k) + fx * level(x + 1, y, k))
                        + fy * ((1 - fx) * level(x, y + 1, k) + fx * level(x + 1, y + 1, k));
            }
            count++;
        }
        for (int k = 0; k < 3; k++) {
            sum[k] = Math.max(1, sum[k] / count);
        }
        return sum;
    }

    private int level(int x, int y, int channel) {
        int column = Math.max(0, Math.min(raster.columns() - 1, x));
        int row = Math.max(0, Math.min(raster.rows() - 1, y));
        return bgr[3 * (row * raster.columns() + column) + channel] & 255;
    }
}
