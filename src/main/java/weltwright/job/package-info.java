/**
 * A customer's job in one file, the files of hardware, prices, stock and the maker's defaults, and the measured lenses
 * of phones.
 *
 * <p>In: Photo, settings, trace, corrections and {@code SheathSpec}.
 *
 * <p>Out: {@code Job}, and files that all later versions open.
 *
 * <p>Uses: {@code camera}, {@code camera.lens}, {@code error}, {@code geometry}, {@code geometry.curve}, {@code io},
 * {@code knife}, {@code layout.cost}, {@code layout.stock}, {@code units}, {@code image} and its sub-packages,
 * {@code sheath} and its sub-packages, {@code trace} and its sub-packages; Jackson.
 */
package weltwright.job;
