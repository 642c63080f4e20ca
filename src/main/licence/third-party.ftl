<#-- One library a line: artifact, version, name, licences, address; read by weltwright.licence.ThirdPartyLicences. -->
<#list dependencyMap as e>
${e.getKey().artifactId}	${e.getKey().version}	<#if e.getKey().name?contains(":")>${e.getKey().artifactId}<#else>${e.getKey().name}</#if>	<#list e.getValue() as l>${l}<#sep>|</#list>	${e.getKey().url!""}
</#list>
