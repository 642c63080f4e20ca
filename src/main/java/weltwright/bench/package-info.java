/** How a pattern becomes a sheath at the bench: edges and what is done to them, the order of work, hardware, thread. */
package weltwright.bench;
