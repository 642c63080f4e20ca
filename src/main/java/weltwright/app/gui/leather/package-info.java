/**
 * The leather stage: the shelf of stock, the layout of a job's pieces on it, found beside the event thread and moved by
 * hand, and what a sheath costs.
 *
 * <p>In: {@code Job}, {@code Pattern}, photos of leather, the shelf and the maker's prices.
 *
 * <p>Out: {@code CuttingPlan} in the job, changes of the shelf, the files of layout and quote.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code hide}, {@code image}, {@code io}, {@code job}, {@code layout} and
 * its sub-packages, {@code output}, {@code output.cutter}, {@code output.layout}, {@code output.print},
 * {@code sheath.pattern}, {@code trace}, {@code trace.capture}, {@code units}, {@code wording} and sub-packages of
 * {@code app.gui}; Swing, FlatLaf and MigLayout.
 */
package weltwright.app.gui.leather;
