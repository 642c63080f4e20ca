package weltwright.layout.search;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Moves shapes until none overlap, or until that no longer gets on: guided local search. Each pass moves every shape
 * that overlaps to a better place, in random order, and then raises the weights of the pairs that still overlap. When
 * many passes have brought nothing, the best arrangement is taken up again under the weights learnt.
 *
 * <p>Two workers with their own random numbers make each pass on copies; the better result goes on. So the result does
 * not depend on the number of threads.
 *
 * <p>Guided local search on overlaps: Egeblad, Nielsen and Odgaard, "Fast neighborhood search for two- and
 * three-dimensional nesting problems" (2007); Umetani et al. (2009). The order of passes and strikes: Gardeyn and
 * Wauters 2025.
 */
final class Separation implements AutoCloseable {
    private static final int WORKERS = 2;

    /** An overlap that is not less than this part of the best so far is no progress. */
    private static final double PROGRESS = 0.98;

    private final Arrangement master;
    private final List<Worker> workers = new ArrayList<>();
    private final ExecutorService pool = Executors.newFixedThreadPool(WORKERS - 1, task -> {
        Thread thread = new Thread(task, "layout");
        thread.setDaemon(true);
        return thread;
    });

    private static final class Worker {
        final Arrangement arrangement;
        final PlaceSearch search;
        final SplittableRandom random;
        final int[] order;

        Worker(Arrangement arrangement, SplittableRandom random) {
            this.arrangement = arrangement;
            this.random = random;
            search = new PlaceSearch(arrangement, random);
            order = new int[arrangement.movable];
        }

        double pass() {
            int n = 0;
            for (int i = 0; i < order.length; i++) {
                if (arrangement.overlaps(i)) {
                    order[n++] = i;
                }
            }
            for (int i = n - 1; i > 0; i--) {
                int j = random.nextInt(i + 1);
                int swapped = order[i];
                order[i] = order[j];
                order[j] = swapped;
            }
            for (int i = 0; i < n; i++) {
                if (arrangement.overlaps(order[i])) {
                    search.move(order[i]);
                }
            }
            return arrangement.totalWeightedOverlap();
        }
    }

    /** @param master the arrangement to separate; the fixed shapes of all are the same */
    Separation(Arrangement master, List<FixedShape> fixed, SplittableRandom random) {
        this.master = master;
        for (int k = 0; k < WORKERS; k++) {
            Arrangement copy = new Arrangement(master.items, fixed, master.length, master.height);
            workers.add(new Worker(copy, random.split()));
        }
    }

    /**
     * Separates the shapes of the arrangement, from where they are.
     *
     * @param patience passes without progress that make a strike
     * @param strikes strikes in a row that end it
     * @return the overlap left, 0 where it succeeded; the arrangement is then the best one found
     */
    double separate(int patience, int strikes, Budget budget, double until) {
        budget.count(1);
        double least = master.totalOverlap();
        Layout best = master.save();
        int struck = 0;
        while (least > 0 && struck < strikes && budget.used() < until) {
            double before = least;
            int idle = 0;
            while (idle < patience && budget.used() < until) {
                pass();
                budget.count(1);
                double overlap = master.totalOverlap();
                if (overlap < least) {
                    idle = overlap < PROGRESS * least ? 0 : idle + 1;
                    least = overlap;
                    best = master.save();
                    if (overlap == 0) {
                        return 0;
                    }
                } else {
                    idle++;
                }
                master.updateWeights();
            }
            struck = least < PROGRESS * before ? 0 : struck + 1;
            master.restore(best);
        }
        return least;
    }

    private void pass() {
        List<Callable<Double>> tasks = new ArrayList<>();
        for (Worker worker : workers) {
            worker.arrangement.copyFrom(master);
            tasks.add(worker::pass);
        }
        try {
            List<Future<Double>> others = new ArrayList<>();
            for (int k = 1; k < WORKERS; k++) {
                others.add(pool.submit(tasks.get(k)));
            }
            Worker best = workers.get(0);
            double least = best.pass();
            for (int k = 1; k < WORKERS; k++) {
                double overlap = others.get(k - 1).get();
                if (overlap < least) {
                    least = overlap;
                    best = workers.get(k);
                }
            }
            master.copyFrom(best.arrangement);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        }
    }

    @Override
    public void close() {
        pool.shutdown();
    }
}
