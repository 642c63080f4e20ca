/** Lengths as makers write them (mm, inches, ounces of leather) and as the program keeps them (mm). */
package weltwright.measure;
