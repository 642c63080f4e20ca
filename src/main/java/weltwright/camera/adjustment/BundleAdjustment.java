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
 * Fits a lens, the ground's stretch and the pose of each view to control points of one ground, in one picture or in
 * several taken with the same lens, from one start.
 *
 * <p>The parameters are (ln f, k1, k2, cx, cy), six of pose for each view (rotation vector, translation), and the
 * stretch: the logarithm of the ratio of the ground's true scales along x and y. The cost is the sum of squared
 * residuals over their variance, with Cauchy's function against outliers, and of the priors. It is minimized by the
 * method of Levenberg and Marquardt on normal equations, which are summed view by view, since a point depends on the
 * pose of its own view only. The noise of each view is estimated robustly and the fit repeated with it. Source: Triggs
 * et al., <i>Bundle adjustment: a modern synthesis</i> (2000).
 *
 * <p>Hipparchus 4.0.2's {@code LevenbergMarquardtOptimizer} was measured in place of the descent, on the control points
 * of five sample photos (67 to 2304 points): focal lengths agree to 1e-8 and the outlines of two traces to the 0.0001
 * mm that are written, but its dense QR decomposition of all residuals takes 2.5 to 12 times the processor time (35 ms
 * instead of 6 ms for 2304 points).
 */
public final class BundleAdjustment {
    static final int LENS = 5;
    static final int POSE = 6;
    private static final int CENTRE = 3;

    /** Relative decrease of the cost below which the final descent stops. Chosen by eye. */
    private static final double FINE_TOLERANCE = 1e-10;

    /** Relative decrease of the cost below which a descent with preliminary noise stops. Chosen by eye. */
    private static final double COARSE_TOLERANCE = 1e-6;

    /** Relative change of the noise below which it counts as converged. Chosen by eye. */
    private static final double NOISE_TOLERANCE = 0.001;

    /** Greatest number of estimates of the noise. Chosen by eye. */
    private static final int MOST_ROUNDS = 4;

    /** Number of steps after which the costs of several starts are compared. Chosen by eye. */
    private static final int COARSE_STEPS = 25;

    /** Greatest number of steps of a descent. Chosen by eye. */
    private static final int MOST_STEPS = 100;

    /** Levenberg and Marquardt's damping at the start. Chosen by eye. */
    private static final double FIRST_DAMPING = 1e-3;

    /** Number of factors multiplied before taking a logarithm, which saves time; so few cannot overflow. */
    private static final int FACTORS_PER_LOG = 8;

    private final List<List<ControlPoint>> observations;
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
    /** Kept from descent to descent, as the curvature of the cost changes little with the noise. */
    private double damping = FIRST_DAMPING;

    /**
     * @param observations control points of each view
     * @param prior prior of the lens
     * @param stretchSigma standard deviation of the stretch
     * @param leastPixelSigma least standard deviation of a coordinate of a point, in pixels
     * @param starts initial views, with a common camera whose centre is the picture's middle
     */
    public BundleAdjustment(
            List<List<ControlPoint>> observations,
            LensPrior prior,
            double stretchSigma,
            double leastPixelSigma,
            List<CameraView> starts) {
        this.observations = observations;
        this.prior = prior;
        this.priorInformation = prior.information();
        this.stretchSigma = stretchSigma;
        this.leastPixelSigma = leastPixelSigma;
        PinholeCamera camera = starts.get(0).camera();
        this.middle = new double[] {camera.centreXPx(), camera.centreYPx()};
        this.centreInformation = 1 / Math.pow(prior.centreSigma() * prior.focalPx(), 2);
        this.parameters = LENS + POSE * observations.size() + 1;
        this.sigma = new double[observations.size()];
        Arrays.fill(sigma, 1);
        this.p = new double[parameters];
        System.arraycopy(parametersOf(starts.get(0)), 0, p, 0, LENS);
        for (int v = 0; v < starts.size(); v++) {
            System.arraycopy(parametersOf(starts.get(v)), LENS, p, LENS + POSE * v, POSE);
        }
    }

    /** Returns a view's lens and pose as parameters. */
    static double[] parametersOf(CameraView view) {
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

    /** Returns the view of parameters of a lens and a pose. */
    static CameraView view(double[] own) {
        return new CameraView(
                new PinholeCamera(Math.exp(own[0]), own[3], own[4], own[1], own[2]),
                new Vector3(own[5], own[6], own[7]),
                new Vector3(own[8], own[9], own[10]));
    }

    private BundleAdjustment(BundleAdjustment from, List<List<ControlPoint>> observations) {
        this.observations = observations;
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

    /** Returns a fit to other control points of the same views, starting where this one ended. */
    BundleAdjustment withObservations(List<List<ControlPoint>> references) {
        return new BundleAdjustment(this, references);
    }

    /** Fits with a few steps and a given noise, so that the costs of several starts can be compared. */
    BundleAdjustment runCoarsely(double pixelSigma) {
        Arrays.fill(sigma, pixelSigma);
        descend(COARSE_TOLERANCE, COARSE_STEPS);
        return this;
    }

    /** Fits and estimates the noise in turns until the noise converges, then fits closely. */
    public BundleAdjustment run() {
        boolean moved = true;
        for (int round = 0; round < MOST_ROUNDS && moved; round++) {
            descend(COARSE_TOLERANCE, MOST_STEPS);
            moved = false;
            for (int v = 0; v < sigma.length; v++) {
                double measured = Math.max(leastPixelSigma, robustSigma(v));
                moved |= Math.abs(measured - sigma[v]) > NOISE_TOLERANCE * sigma[v];
                sigma[v] = measured;
            }
        }
        descend(FINE_TOLERANCE, MOST_STEPS);
        return this;
    }

    /** Returns the cost at the solution: twice the negative logarithm of the probability, but for a constant. */
    public double cost() {
        return cost;
    }

    /** Returns the fitted view of a picture. */
    public CameraView view(int v) {
        return view(local(p, v));
    }

    /** Returns the standard deviation of a coordinate of a view's points, in pixels. */
    public double pixelSigma(int v) {
        return sigma[v];
    }

    /** Returns the stretch. */
    double logStretch() {
        return p[parameters - 1];
    }

    /** Returns the number of a view's points within three standard deviations. */
    int inliers(int v) {
        double[] r = residuals(p, v);
        int inliers = 0;
        for (int i = 0; i < r.length; i += 2) {
            inliers += Math.hypot(r[i], r[i + 1]) < 3 * sigma[v] ? 1 : 0;
        }
        return inliers;
    }

    /** Returns the covariance of all parameters, in their order, by the pixels' noise and the priors. */
    public double[][] covariance() {
        return new SymmetricSystem(normal().matrix).inverse();
    }

    /** Minimizes the cost at the current noise. */
    private void descend(double tolerance, int steps) {
        cost = cost(p);
        for (int i = 0; i < steps; i++) {
            Normal normal = normal();
            // Raises the damping on the same equations until the cost decreases.
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
                if (i / 2 % FACTORS_PER_LOG == FACTORS_PER_LOG - 1) {
                    sum += 4 * Math.log(product);
                    product = 1;
                }
            }
            sum += 4 * Math.log(product);
        }
        return sum;
    }

    /** Extracts the parameters of a view's lens and pose. */
    private double[] local(double[] q, int v) {
        double[] own = Arrays.copyOf(q, LENS + POSE);
        System.arraycopy(q, LENS + POSE * v, own, LENS, POSE);
        return own;
    }

    /** Returns the residuals of a view in x and y, in pixels; of points on edges, only the part across the edge. */
    private double[] residuals(double[] q, int v) {
        List<ControlPoint> references = observations.get(v);
        CameraView view = view(local(q, v));
        // Rotates the ground's axes instead of each point.
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

    /** Estimates the standard deviation of a coordinate of a view's points from the median residual. */
    double robustSigma(int v) {
        List<ControlPoint> references = observations.get(v);
        double[] r = residuals(p, v);
        double[] sizes = new double[references.size()];
        for (int i = 0; i < sizes.length; i++) {
            // Median of a Rayleigh and of a half-normal variable of sigma 1.
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
     * Adds a view's points to the normal equations, by the Gauss-Newton approximation with robust weights. A point on
     * an edge has a single residual, across the edge, whose derivative includes the edge's rotation in the picture.
     */
    private void add(int v, double[][] m, double[] g) {
        int[] own = ownParameters(v);
        double[] values = Arrays.stream(own).mapToDouble(k -> p[k]).toArray();
        equations(v, values, observations.get(v)).addTo(m, g, own);
    }

    private NormalEquations equations(int v, double[] values, List<ControlPoint> references) {
        NormalEquations equations = new NormalEquations(values.length);
        ProjectionDerivatives at = new ProjectionDerivatives(values);
        ProjectionDerivatives farther = new ProjectionDerivatives(values);
        double[] across = new double[values.length];
        for (ControlPoint reference : references) {
            at.project(reference.onGround());
            double offX = at.x - reference.pixel().x();
            double offY = at.y - reference.pixel().y();
            if (reference.edge().isEmpty()) {
                double weight = weight(v, offX * offX + offY * offY);
                equations.add(weight, offX, at.dx, offY, at.dy);
            } else {
                farther.project(reference.onGround().plus(reference.edge().get()));
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
                equations.add(weight(v, off * off), off, across);
            }
        }
        return equations;
    }

    private double weight(int v, double squareOff) {
        return 1 / (sigma[v] * sigma[v] * (1 + squareOff / (4 * sigma[v] * sigma[v])));
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

    /** Estimates the initial view of each picture for a camera without distortion. */
    public static List<CameraView> starts(List<List<ControlPoint>> observations, PinholeCamera camera) {
        List<CameraView> starts = new ArrayList<>();
        for (List<ControlPoint> references : observations) {
            starts.add(PlanarPoseEstimator.of(references, camera));
        }
        return starts;
    }
}
