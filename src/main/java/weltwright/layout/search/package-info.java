/**
 * The search for a layout without overlap: separation by guided local search, in a strip of least length or in a given
 * container.
 *
 * <p>In: Shapes with the turns allowed to them, a container, a seed and a budget.
 *
 * <p>Out: Where each shape lies.
 *
 * <p>Uses: {@code layout.collision}.
 */
package weltwright.layout.search;
