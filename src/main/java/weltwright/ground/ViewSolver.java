package weltwright.ground;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.SymmetricSystem;

/**
 * The camera and pose that explain best where reference points of the ground are seen: the focal length, two terms of
 * radial distortion and the pose, all at once.
 *
 * <p>The most probable values are sought: squared residuals over their variance, by Cauchy's function so that a wrong
 * point counts for little, plus a prior on the lens. The prior decides only what the points leave open; seen from
 * straight above they say nothing of the focal length, tilted by a few degrees they pin it far better than Exif does.
 * Minimised by Levenberg's and Marquardt's method.
 *
 * <p>Sources: Triggs et al., <i>Bundle adjustment: a modern synthesis</i> (2000), for the cost and its covariance;
 * Hartley and Zisserman, <i>Multiple View Geometry</i>, for the pinhole model. Assumes the optical axis to meet the
 * picture's centre, which a cropped picture breaks.
 */
public final class ViewSolver {
    /** Parameters of a view: ln f, k1, k2, three of rotation, three of translation. */
    private static final int VIEW_PARAMETERS = 9;

    /** The same, and the ground's stretch. */
    private static final int PARAMETERS = VIEW_PARAMETERS + 1;

    /** Of a ground whose proportions are not in doubt. */
    private static final double NO_STRETCH = 1e-6;

    /** Lenses of phones, after their own correction, keep k1 and k2 within about this. From memory. */
    private static final double K1_SIGMA = 0.06;

    private static final double K2_SIGMA = 0.03;

    /** Corners found by gradients are seldom better than this; keeps a lucky fit from claiming more. */
    private static final double LEAST_PIXEL_SIGMA = 0.03;

    /** A descent ends where a step lowers the cost by less than this part of it. */
    private static final double CLOSELY = 1e-10;

    private static final double ROUGHLY = 1e-6;

    /** Enough references to tell the valleys of several starts apart; the descent in the best is by all of them. */
    private static final int TO_CHOOSE_BY = 150;

    private ViewSolver() {}

    /**
     * What is known of the focal length beforehand.
     *
     * @param focalPx the likeliest value
     * @param relativeSigma standard deviation of its logarithm
     */
    public record FocalPrior(double focalPx, double relativeSigma) {}

    /**
     * @param view the solution
     * @param covariance of (ln f, k1, k2, rotation, translation), 9 × 9, as far as the pixels' noise goes
     * @param pixelSigma the noise of one coordinate of a reference point, in pixels, robustly estimated
     * @param used how many references lie within three of it
     */
    public record Solution(View view, double[][] covariance, double pixelSigma, int used) {

        /** Standard deviation of the focal length, as a part of it. */
        public double focalRelativeSigma() {
            return Math.sqrt(covariance[0][0]);
        }

        /**
         * Views that are each off by one standard deviation, independently of each other. The first is off in its focal
         * length, and in all else as far as that goes with it; the others are off with the focal length right.
         */
        public List<View> offByOneSigma() {
            double[][] moves = new SymmetricSystem(covariance).lowerFactor();
            List<View> views = new ArrayList<>();
            for (int k = 0; k < VIEW_PARAMETERS; k++) {
                double[] p = parameters(view);
                for (int i = 0; i < VIEW_PARAMETERS; i++) {
                    p[i] += moves[i][k];
                }
                views.add(viewOf(p, view.camera()));
            }
            return views;
        }
    }

    /**
     * @param references at least six, not all on one line; those on an edge count across it only
     * @param widthPx of the picture
     * @param heightPx of the picture
     */
    public static Solution solve(List<Reference> references, int widthPx, int heightPx, FocalPrior prior) {
        return solve(references, widthPx, heightPx, prior, NO_STRETCH);
    }

    /**
     * The same on a ground whose proportions are known no better than so: each x may be longer in truth by a small
     * part, and each y shorter by as much. Tilt shortens the ground's picture one way too, and what is seen of that
     * says how long the lens is; paper that is cut 0.1 % too narrow would be taken for a lens that is off by 2 %, were
     * it not allowed for.
     *
     * @param stretchSigma standard deviation of the ratio of the scales along x and y, over 1
     */
    public static Solution solve(
            List<Reference> references, int widthPx, int heightPx, FocalPrior prior, double stretchSigma) {
        double cx = (widthPx - 1) / 2.0;
        double cy = (heightPx - 1) / 2.0;
        List<Reference> few = spread(references);
        Fit best = null;
        // A wide prior may start far off; a few starts along it make sure of the right valley.
        for (double step : prior.relativeSigma() > 0.1 ? new double[] {-0.4, 0, 0.4, 0.8} : new double[] {0}) {
            Camera camera = new Camera(prior.focalPx() * Math.exp(step), cx, cy, 0, 0);
            Fit fit = new Fit(few, prior, stretchSigma, parameters(PlanarPose.of(few, camera)), camera);
            fit.run();
            if (best == null || fit.cost < best.cost) {
                best = fit;
            }
        }
        if (few.size() < references.size()) {
            best = new Fit(references, prior, stretchSigma, best.p, best.centre);
            best.run();
        }
        return best.solution();
    }

    /** Some of the references, from all over the ground as they follow each other; all where they are few. */
    private static List<Reference> spread(List<Reference> references) {
        double step = Math.max(1, references.size() / (double) TO_CHOOSE_BY);
        List<Reference> few = new ArrayList<>();
        for (double k = 0; k < references.size(); k += step) {
            few.add(references.get((int) k));
        }
        return few;
    }

    private static double[] parameters(View view) {
        Camera c = view.camera();
        Vector3 r = view.rotation();
        Vector3 t = view.translation();
        return new double[] {Math.log(c.focalPx()), c.k1(), c.k2(), r.x(), r.y(), r.z(), t.x(), t.y(), t.z()};
    }

    private static View viewOf(double[] p, Camera centre) {
        return new View(
                new Camera(Math.exp(p[0]), centre.centreXPx(), centre.centreYPx(), p[1], p[2]),
                new Vector3(p[3], p[4], p[5]),
                new Vector3(p[6], p[7], p[8]));
    }

    /** One descent from one start. */
    private static final class Fit {
        private final List<Reference> references;
        private final FocalPrior prior;
        private final double stretchSigma;
        private final Camera centre;
        private double[] p;
        private double sigma = 1;
        private double cost;

        Fit(List<Reference> references, FocalPrior prior, double stretchSigma, double[] start, Camera centre) {
            this.references = references;
            this.prior = prior;
            this.stretchSigma = stretchSigma;
            this.centre = centre;
            this.p = Arrays.copyOf(start, PARAMETERS);
        }

        void run() {
            // The noise is not known beforehand: fit, measure it, fit again with it.
            for (int round = 0; round < 4; round++) {
                descend(ROUGHLY);
                sigma = Math.max(LEAST_PIXEL_SIGMA, robustSigma());
            }
            descend(CLOSELY);
        }

        private void descend(double tolerance) {
            double damping = 1e-3;
            cost = cost(p);
            for (int i = 0; i < 100; i++) {
                Normal normal = normal();
                double[] step = new SymmetricSystem(normal.damped(damping)).solve(normal.gradient);
                double[] next = p.clone();
                for (int k = 0; k < PARAMETERS; k++) {
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
                } else {
                    damping *= 8;
                    if (damping > 1e9) {
                        return;
                    }
                }
            }
        }

        private double cost(double[] q) {
            double sum = priorCost(q);
            double[] r = residuals(q);
            for (int i = 0; i < r.length; i += 2) {
                // Cauchy's function with its scale at two standard deviations.
                sum += 4 * Math.log1p((r[i] * r[i] + r[i + 1] * r[i + 1]) / (4 * sigma * sigma));
            }
            return sum;
        }

        private double priorCost(double[] q) {
            double f = (q[0] - Math.log(prior.focalPx())) / prior.relativeSigma();
            double a = q[1] / K1_SIGMA;
            double b = q[2] / K2_SIGMA;
            double s = q[VIEW_PARAMETERS] / stretchSigma;
            return f * f + a * a + b * b + s * s;
        }

        private double[] residuals(double[] q) {
            View view = viewOf(q, centre);
            // The ground's axes are turned once, not each point of it.
            double stretch = Math.exp(q[VIEW_PARAMETERS] / 2);
            Vector3 right = new Vector3(stretch, 0, 0).turned(view.rotation());
            Vector3 up = new Vector3(0, 1 / stretch, 0).turned(view.rotation());
            double[] r = new double[2 * references.size()];
            for (int i = 0; i < references.size(); i++) {
                Reference reference = references.get(i);
                Point at = reference.onGround();
                Vector3 towards = view.translation().plus(right.times(at.x())).plus(up.times(at.y()));
                Point off = view.camera().pixel(towards).minus(reference.pixel());
                if (reference.edge().isPresent()) {
                    Point edge = reference.edge().get();
                    Vector3 farther = towards.plus(right.times(edge.x())).plus(up.times(edge.y()));
                    Point run = view.camera().pixel(farther).minus(view.camera().pixel(towards)).unit();
                    off = off.minus(run.times(off.dot(run)));
                }
                r[2 * i] = off.x();
                r[2 * i + 1] = off.y();
            }
            return r;
        }

        private double robustSigma() {
            double[] r = residuals(p);
            double[] sizes = new double[references.size()];
            for (int i = 0; i < sizes.length; i++) {
                // The median size is 1.1774 sigma in two directions (Rayleigh), 0.6745 in one (half normal).
                double median = references.get(i).edge().isPresent() ? 0.6745 : 1.1774;
                sizes[i] = Math.hypot(r[2 * i], r[2 * i + 1]) / median;
            }
            Arrays.sort(sizes);
            return sizes[sizes.length / 2];
        }

        private record Normal(double[][] matrix, double[] gradient) {
            double[][] damped(double damping) {
                double[][] m = new double[PARAMETERS][];
                for (int i = 0; i < PARAMETERS; i++) {
                    m[i] = matrix[i].clone();
                    m[i][i] *= 1 + damping;
                }
                return m;
            }
        }

        /**
         * Gauss's and Newton's approximation: the sums of products of the residuals' derivatives, weighted. A point of an
         * edge has one residual, across it; its derivative has a part from the edge's turning, too.
         */
        private Normal normal() {
            double[][] m = new double[PARAMETERS][PARAMETERS];
            double[] g = new double[PARAMETERS];
            Sighting at = new Sighting(p, centre);
            Sighting farther = new Sighting(p, centre);
            double[] across = new double[PARAMETERS];
            for (Reference reference : references) {
                at.see(reference.onGround());
                double offX = at.x - reference.pixel().x();
                double offY = at.y - reference.pixel().y();
                if (reference.edge().isEmpty()) {
                    double weight = weight(offX * offX + offY * offY);
                    add(m, g, weight, offX, at.dx);
                    add(m, g, weight, offY, at.dy);
                } else {
                    farther.see(reference.onGround().plus(reference.edge().get()));
                    double runX = farther.x - at.x;
                    double runY = farther.y - at.y;
                    double run = Math.sqrt(runX * runX + runY * runY);
                    double normalX = -runY / run;
                    double normalY = runX / run;
                    double offAlong = (offX * runX + offY * runY) / run;
                    for (int k = 0; k < PARAMETERS; k++) {
                        double turn = (normalX * (farther.dx[k] - at.dx[k]) + normalY * (farther.dy[k] - at.dy[k])) / run;
                        across[k] = normalX * at.dx[k] + normalY * at.dy[k] - offAlong * turn;
                    }
                    double off = normalX * offX + normalY * offY;
                    add(m, g, weight(off * off), off, across);
                }
            }
            addPrior(m, g, 0, p[0] - Math.log(prior.focalPx()), prior.relativeSigma());
            addPrior(m, g, 1, p[1], K1_SIGMA);
            addPrior(m, g, 2, p[2], K2_SIGMA);
            addPrior(m, g, VIEW_PARAMETERS, p[VIEW_PARAMETERS], stretchSigma);
            for (int k = 0; k < PARAMETERS; k++) {
                for (int l = 0; l < k; l++) {
                    m[l][k] = m[k][l];
                }
            }
            return new Normal(m, g);
        }

        private double weight(double squareOff) {
            return 1 / (sigma * sigma * (1 + squareOff / (4 * sigma * sigma)));
        }

        private static void add(double[][] m, double[] g, double weight, double residual, double[] derivative) {
            for (int k = 0; k < PARAMETERS; k++) {
                double weighted = weight * derivative[k];
                g[k] += weighted * residual;
                for (int l = 0; l <= k; l++) {
                    m[k][l] += weighted * derivative[l];
                }
            }
        }

        private static void addPrior(double[][] m, double[] g, int k, double off, double sigma) {
            m[k][k] += 1 / (sigma * sigma);
            g[k] += off / (sigma * sigma);
        }

        Solution solution() {
            double[][] all = new SymmetricSystem(normal().matrix).inverse();
            double[][] covariance = new double[VIEW_PARAMETERS][];
            Arrays.setAll(covariance, k -> Arrays.copyOf(all[k], VIEW_PARAMETERS));
            double[] r = residuals(p);
            int used = 0;
            for (int i = 0; i < r.length; i += 2) {
                used += Math.hypot(r[i], r[i + 1]) < 3 * sigma ? 1 : 0;
            }
            return new Solution(viewOf(p, centre), covariance, sigma, used);
        }
    }
}
