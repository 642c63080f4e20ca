/**
 * Forms for the sheath: kind, leather, welt, throat, stitches, straps.
 *
 * <p>In: Typed values.
 *
 * <p>Out: A changed {@code SheathSpec} in the job.
 *
 * <p>Uses: {@code app.gui.assembled}, {@code app.gui.drawing}, {@code app.gui.form}, {@code app.gui.model},
 * {@code app.gui.pattern}, {@code geometry}, {@code job}, {@code knife}, {@code sheath.pattern},
 * {@code sheath.planform}, {@code sheath.spec} and {@code units}; Swing.
 */
package weltwright.app.gui.sheath;
