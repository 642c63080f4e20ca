/**
 * The command line.
 *
 * <p>In: Arguments.
 *
 * <p>Out: Files and text on the terminal.
 *
 * <p>Uses: {@code assembly}, {@code camera.lens}, {@code error}, {@code geometry}, {@code geometry.curve},
 * {@code ground.sheet}, {@code hide}, {@code image}, {@code io}, {@code job}, {@code knife}, {@code layout} and its
 * sub-packages, {@code units}, {@code wording}, {@code output} and its sub-packages, sub-packages of {@code sheath},
 * {@code trace} and its sub-packages; Jackson and picocli.
 */
package weltwright.app.cli;
