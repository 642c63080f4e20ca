package weltwright.camera.adjustment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Vector3;
import weltwright.camera.lens.LensPrior;
import weltwright.geometry.Point;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.geometry.fit.SymmetricSystem;

/**
 * One descent from one start: the lens, the ground's stretch and the poses that explain best where points of one ground
 * are seen in one picture or in several, all taken with the same lens.
 *
 * <p>The parameters are (ln f, k1, k2, cx, cy), six of pose for each view (rotation, translation), and the logarithm of
 * the ground's stretch. Minimised by Levenberg's and Marquardt's method; a view's points hang on its own pose only,
 * besides what is shared. Source: Triggs et al., <i>Bundle adjustment: a modern synthesis</i> (2000).
 */
public final class BundleAdjustment {
    static final int LENS = 5;
    static final int POSE = 6;
    private static final int CENTRE = 3;

    /** A descent ends where a step lowers the cost by less than this part of it. */
    private static final double CLOSELY = 1e-10;

    private static final double ROUGHLY = 1e-6;

    /** The noise is measured until it changes by less than this part of it, or so often. */
    private static final double SETTLED = 0.001;

    private static final int MOST_ROUNDS = 4;

    /** Enough steps, if they are good ones, to tell from a far start in which valley the least cost lies. */
    private static final int ROUGH_STEPS = 25;

    private static final int MOST_STEPS = 100;

    /** Levenberg's and Marquardt's damping to begin with. */
    private static final double FIRST_DAMPING = 1e-3;

    /** Logarithms are taken of the products of so many, which no residual makes too large for a number. */
    private static final int TOGETHER = 8;

    private final List<List<ControlPoint>> seen;
    private final LensPrior prior;
    private final double[][] priorInformation;
    private final double stretchSigma;
    private final double leastPixelSigma;
    private final double[] middle;
    private final double centreInformation;
    private final int parameters;
    private double[] p;
    private final double[] sigma;
    private double cost;
    /** Kept from descent to descent: how narrow the valley is does not change by a little other noise. */
    private double damping = FIRST_DAMPING;

    /**
     * @param seen the references of each view
     * @param starts a first guess at each view; they share a camera, whose centre is the picture's middle
     * @param leastPixelSigma what noise of a coordinate there must be, however well the points fit
     */
    public BundleAdjustment(
            List<List<ControlPoint>> seen,
            LensPrior prior,
            double stretchSigma,
            double leastPixelSigma,
            List<CameraView> starts) {
        this.seen = seen;
        this.prior = prior;
        this.priorInformation = prior.information();
        this.stretchSigma = stretchSigma;
        this.leastPixelSigma = leastPixelSigma;
        PinholeCamera camera = starts.get(0).camera();
        this.middle = new double[] {camera.centreXPx(), camera.centreYPx()};
        this.centreInformation = 1 / Math.pow(prior.centreSigma() * prior.focalPx(), 2);
        this.parameters = LENS + POSE * seen.size() + 1;
        this.sigma = new double[seen.size()];
        Arrays.fill(sigma, 1);
        this.p = new double[parameters];
        System.arraycopy(ofView(starts.get(0)), 0, p, 0, LENS);
        for (int v = 0; v < starts.size(); v++) {
            System.arraycopy(ofView(starts.get(v)), LENS, p, LENS + POSE * v, POSE);
        }
    }

    /** A view's lens and pose as parameters. */
    static double[] ofView(CameraView view) {
        PinholeCamera c = view.camera();
        Vector3 r = view.rodrigues();
        Vector3 t = view.translation();
        return new double[] {
            Math.log(c.focalPx()),
            c.k1(),
            c.k2(),
            c.centreXPx(),
            c.centreYPx(),
            r.x(),
            r.y(),
            r.z(),
            t.x(),
            t.y(),
            t.z()
        };
    }

    /** The same back. */
    static CameraView view(double[] own) {
        return new CameraView(
                new PinholeCamera(Math.exp(own[0]), own[3], own[4], own[1], own[2]),
                new Vector3(own[5], own[6], own[7]),
                new Vector3(own[8], own[9], own[10]));
    }

    private BundleAdjustment(BundleAdjustment from, List<List<ControlPoint>> seen) {
        this.seen = seen;
        this.prior = from.prior;
        this.priorInformation = from.priorInformation;
        this.stretchSigma = from.stretchSigma;
        this.leastPixelSigma = from.leastPixelSigma;
        this.middle = from.middle;
        this.centreInformation = from.centreInformation;
        this.parameters = from.parameters;
        this.sigma = from.sigma.clone();
        this.p = from.p.clone();
        this.damping = from.damping;
    }

    /** A descent from where this one ended, by other references of the same views. */
    BundleAdjustment by(List<List<ControlPoint>> references) {
        return new BundleAdjustment(this, references);
    }

    /** Roughly, by a noise that is taken for known: by the same for several starts, their costs can be compared. */
    BundleAdjustment roughly(double pixelSigma) {
        Arrays.fill(sigma, pixelSigma);
        descend(ROUGHLY, ROUGH_STEPS);
        return this;
    }

    public BundleAdjustment run() {
        // The noise is not known beforehand: fit, measure it, fit again with it.
        boolean moved = true;
        for (int round = 0; round < MOST_ROUNDS && moved; round++) {
            descend(ROUGHLY, MOST_STEPS);
            moved = false;
            for (int v = 0; v < sigma.length; v++) {
                double measured = Math.max(leastPixelSigma, robustSigma(v));
                moved |= Math.abs(measured - sigma[v]) > SETTLED * sigma[v];
                sigma[v] = measured;
            }
        }
        descend(CLOSELY, MOST_STEPS);
        return this;
    }

    public double cost() {
        return cost;
    }

    public CameraView view(int v) {
        return view(local(p, v));
    }

    /** The noise of one coordinate of a reference of a view, in pixels. */
    public double pixelSigma(int v) {
        return sigma[v];
    }

    /** The logarithm of how much longer the ground is along x in truth, against along y. */
    double logStretch() {
        return p[parameters - 1];
    }

    /** How many references of a view lie within three times its noise. */
    int inliers(int v) {
        double[] r = residuals(p, v);
        int inliers = 0;
        for (int i = 0; i < r.length; i += 2) {
            inliers += Math.hypot(r[i], r[i + 1]) < 3 * sigma[v] ? 1 : 0;
        }
        return inliers;
    }

    /** Of all parameters, in their order, as far as the pixels' noise and the priors go. */
    public double[][] covariance() {
        return new SymmetricSystem(normal().matrix).inverse();
    }

    private void descend(double tolerance, int steps) {
        cost = cost(p);
        for (int i = 0; i < steps; i++) {
            Normal normal = normal();
            // Where one damping was not enough the next step starts from the same equations.
            while (true) {
                double[] step = new SymmetricSystem(normal.damped(damping)).solve(normal.gradient);
                double[] next = p.clone();
                for (int k = 0; k < parameters; k++) {
                    next[k] -= step[k];
                }
                double nextCost = cost(next);
                if (nextCost < cost) {
                    boolean done = cost - nextCost < tolerance * cost;
                    p = next;
                    cost = nextCost;
                    damping = Math.max(1e-12, damping / 5);
                    if (done) {
                        return;
                    }
                    break;
                }
                damping *= 8;
                if (damping > 1e9) {
                    damping = FIRST_DAMPING;
                    return;
                }
            }
        }
    }

    private double cost(double[] q) {
        double[] lens = prior.deviation(q[0], q[1], q[2]);
        double s = q[parameters - 1] / stretchSigma;
        double sum = s * s;
        for (int k = 0; k < CENTRE; k++) {
            for (int l = 0; l < CENTRE; l++) {
                sum += lens[k] * priorInformation[k][l] * lens[l];
            }
        }
        for (int k = 0; k < 2; k++) {
            double off = q[CENTRE + k] - middle[k];
            sum += off * off * centreInformation;
        }
        for (int v = 0; v < sigma.length; v++) {
            double[] r = residuals(q, v);
            double product = 1;
            for (int i = 0; i < r.length; i += 2) {
                // Cauchy's function with its scale at two standard deviations.
                product *= 1 + (r[i] * r[i] + r[i + 1] * r[i + 1]) / (4 * sigma[v] * sigma[v]);
                if (i / 2 % TOGETHER == TOGETHER - 1) {
                    sum += 4 * Math.log(product);
                    product = 1;
                }
            }
            sum += 4 * Math.log(product);
        }
        return sum;
    }

    /** The parameters of a view's lens and pose. */
    private double[] local(double[] q, int v) {
        double[] own = Arrays.copyOf(q, LENS + POSE);
        System.arraycopy(q, LENS + POSE * v, own, LENS, POSE);
        return own;
    }

    /** How far off each reference of a view is seen, across and down. */
    private double[] residuals(double[] q, int v) {
        List<ControlPoint> references = seen.get(v);
        CameraView view = view(local(q, v));
        // The ground's axes are turned once, not each point of it.
        double stretch = Math.exp(q[parameters - 1] / 2);
        Vector3 right = new Vector3(stretch, 0, 0).rotated(view.rodrigues());
        Vector3 up = new Vector3(0, 1 / stretch, 0).rotated(view.rodrigues());
        double[] r = new double[2 * references.size()];
        for (int i = 0; i < references.size(); i++) {
            ControlPoint reference = references.get(i);
            Point at = reference.onGround();
            Vector3 towards = view.translation().plus(right.times(at.x())).plus(up.times(at.y()));
            Point off = view.camera().pixel(towards).minus(reference.pixel());
            if (reference.edge().isPresent()) {
                Point edge = reference.edge().get();
                Vector3 farther = towards.plus(right.times(edge.x())).plus(up.times(edge.y()));
                Point run = view.camera()
                        .pixel(farther)
                        .minus(view.camera().pixel(towards))
                        .unit();
                off = off.minus(run.times(off.dot(run)));
            }
            r[2 * i] = off.x();
            r[2 * i + 1] = off.y();
        }
        return r;
    }

    /** The noise of one coordinate of a view's references, in pixels, as they fit so far. */
    double robustSigma(int v) {
        List<ControlPoint> references = seen.get(v);
        double[] r = residuals(p, v);
        double[] sizes = new double[references.size()];
        for (int i = 0; i < sizes.length; i++) {
            // The median size is 1.1774 sigma in two directions (Rayleigh), 0.6745 in one (half normal).
            double median = references.get(i).edge().isPresent() ? 0.6745 : 1.1774;
            sizes[i] = Math.hypot(r[2 * i], r[2 * i + 1]) / median;
        }
        return OrderStatistic.median(sizes);
    }

    private record Normal(double[][] matrix, double[] gradient) {
        double[][] damped(double damping) {
            double[][] m = new double[matrix.length][];
            for (int i = 0; i < m.length; i++) {
                m[i] = matrix[i].clone();
                m[i][i] *= 1 + damping;
            }
            return m;
        }
    }

    private Normal normal() {
        double[][] m = new double[parameters][parameters];
        double[] g = new double[parameters];
        for (int v = 0; v < sigma.length; v++) {
            add(v, m, g);
        }
        double[] lens = prior.deviation(p[0], p[1], p[2]);
        for (int k = 0; k < CENTRE; k++) {
            for (int l = 0; l < CENTRE; l++) {
                m[k][l] += priorInformation[k][l];
                g[k] += priorInformation[k][l] * lens[l];
            }
        }
        for (int k = 0; k < 2; k++) {
            m[CENTRE + k][CENTRE + k] += centreInformation;
            g[CENTRE + k] += centreInformation * (p[CENTRE + k] - middle[k]);
        }
        int last = parameters - 1;
        m[last][last] += 1 / (stretchSigma * stretchSigma);
        g[last] += p[last] / (stretchSigma * stretchSigma);
        return new Normal(m, g);
    }

    /**
     * What one view's points add to the normal equations, by Gauss's and Newton's approximation: the sums of products
     * of the residuals' derivatives, weighted. A point of an edge has one residual, across it; its derivative has a
     * part from the edge's turning, too.
     */
    private void add(int v, double[][] m, double[] g) {
        int[] own = ownParameters(v);
        double[] values = Arrays.stream(own).mapToDouble(k -> p[k]).toArray();
        Sums sums = sums(v, values, seen.get(v));
        int next = 0;
        for (int k = 0; k < own.length; k++) {
            g[own[k]] += sums.slope[k];
            for (int l = 0; l <= k; l++) {
                m[own[k]][own[l]] += sums.products[next++];
            }
        }
    }

    /**
     * @param products the lower triangle, row by row, which is all that is read, as own parameters are in rising order
     */
    private record Sums(double[] products, double[] slope) {}

    private Sums sums(int v, double[] values, List<ControlPoint> references) {
        double[] products = new double[values.length * (values.length + 1) / 2];
        double[] slope = new double[values.length];
        ProjectionDerivatives at = new ProjectionDerivatives(values);
        ProjectionDerivatives farther = new ProjectionDerivatives(values);
        double[] across = new double[values.length];
        for (ControlPoint reference : references) {
            at.see(reference.onGround());
            double offX = at.x - reference.pixel().x();
            double offY = at.y - reference.pixel().y();
            if (reference.edge().isEmpty()) {
                double weight = weight(v, offX * offX + offY * offY);
                add(products, slope, weight, offX, at.dx, offY, at.dy);
            } else {
                farther.see(reference.onGround().plus(reference.edge().get()));
                double runX = farther.x - at.x;
                double runY = farther.y - at.y;
                double run = Math.sqrt(runX * runX + runY * runY);
                double normalX = -runY / run;
                double normalY = runX / run;
                double offAlong = (offX * runX + offY * runY) / run;
                for (int k = 0; k < across.length; k++) {
                    double turn = (normalX * (farther.dx[k] - at.dx[k]) + normalY * (farther.dy[k] - at.dy[k])) / run;
                    across[k] = normalX * at.dx[k] + normalY * at.dy[k] - offAlong * turn;
                }
                double off = normalX * offX + normalY * offY;
                add(products, slope, weight(v, off * off), off, across);
            }
        }
        return new Sums(products, slope);
    }

    private double weight(int v, double squareOff) {
        return 1 / (sigma[v] * sigma[v] * (1 + squareOff / (4 * sigma[v] * sigma[v])));
    }

    private static void add(double[] products, double[] slope, double weight, double residual, double[] derivative) {
        int next = 0;
        for (int k = 0; k < derivative.length; k++) {
            double weighted = weight * derivative[k];
            slope[k] += weighted * residual;
            for (int l = 0; l <= k; l++) {
                products[next++] += weighted * derivative[l];
            }
        }
    }

    /** The same for two residuals of one weight. */
    private static void add(
            double[] products, double[] slope, double weight, double offX, double[] dx, double offY, double[] dy) {
        int next = 0;
        for (int k = 0; k < dx.length; k++) {
            double byX = weight * dx[k];
            double byY = weight * dy[k];
            slope[k] += byX * offX + byY * offY;
            for (int l = 0; l <= k; l++) {
                products[next++] += byX * dx[l] + byY * dy[l];
            }
        }
    }

    private int[] ownParameters(int v) {
        int[] own = new int[LENS + POSE + 1];
        for (int k = 0; k < LENS; k++) {
            own[k] = k;
        }
        for (int k = 0; k < POSE; k++) {
            own[LENS + k] = LENS + POSE * v + k;
        }
        own[LENS + POSE] = parameters - 1;
        return own;
    }

    /** The first guess at a view of each picture: the pose for a camera without distortion. */
    public static List<CameraView> starts(List<List<ControlPoint>> seen, PinholeCamera camera) {
        List<CameraView> starts = new ArrayList<>();
        for (List<ControlPoint> references : seen) {
            starts.add(PlanarPoseEstimator.of(references, camera));
        }
        return starts;
    }
}
