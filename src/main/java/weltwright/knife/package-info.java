/** The knife: its outline in its own frame, its landmarks, its thicknesses and its cross-sections. */
package weltwright.knife;
