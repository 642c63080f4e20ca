/** The window: small views over one immutable job and one history that can be undone. The only package with Swing. */
package weltwright.window;
